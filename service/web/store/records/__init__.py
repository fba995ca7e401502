"""Objects and containers over HTTP: read, add, change, find, and what became of them."""
