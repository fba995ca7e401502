"""Photos of an object: added, and shown otherwise; their files are never changed."""
