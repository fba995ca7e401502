"""What lies in which container, revision by revision; earlier revisions are never touched."""
