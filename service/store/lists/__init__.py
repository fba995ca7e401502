"""Pages of records in natural order, and the search."""
