"""The search: which box it is in, answered in one step."""
