"""The form of an object's record: written, read, and kept."""
