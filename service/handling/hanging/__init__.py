"""Hang or box: what the records say of a garment, turned into advice with its reasons. Pure."""
