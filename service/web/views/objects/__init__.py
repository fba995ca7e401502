"""Objects: all of them, one, its record and its photos."""
