"""Plates: one face's finished ink, made by filling a frame, kept by the hash of all that made it.

Takes pages and frames, gives plates. Knows nothing of sheets and opens no picture.
"""
