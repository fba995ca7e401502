"""Kinds of column, and many rows at once."""
