"""For contributors: every piece of the pages at its worst."""
