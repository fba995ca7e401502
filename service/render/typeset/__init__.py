"""Lines set as glyphs by the same shaper that measures them.

Takes a line of text and its style, gives the operators that show it. Breaks no lines by itself.
"""
