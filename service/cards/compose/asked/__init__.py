"""Kinds that are printed when somebody asks for them, or where a lid is clear."""
