"""Putting new cards on: the list to walk with, and a card that was scanned."""
