"""Files named by their SHA-256, and the photos of objects among them."""
