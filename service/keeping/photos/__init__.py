"""Photos in bulk: from a folder or a packed one to the objects whose numbers their names hold."""
