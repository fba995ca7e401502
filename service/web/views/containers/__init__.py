"""Pages of containers: all of them, and one with what lies in it."""
