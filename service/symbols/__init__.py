"""QR symbols: takes a number, gives the text to encode, its matrix and its size in print.

Knows nothing of cards, pages or ink: what leaves here is plain data that any output can draw.
"""
