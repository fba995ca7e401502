"""The swap list as pages."""
