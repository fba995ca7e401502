"""The first page: what needs doing today, and how an empty store begins."""
