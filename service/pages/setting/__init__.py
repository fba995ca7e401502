"""Typesetting for every kind: sizes from reading distances, lines, and stacks of blocks."""
