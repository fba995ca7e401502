"""The museum's own choices, from a TOML file or a JSON object; a file a subject."""
