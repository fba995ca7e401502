"""The commands that keep records and printed cards, a file a part of the work."""
