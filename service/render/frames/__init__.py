"""Frames: what a template makes of each slot, measured once from the layout engine's own ink.

Takes templates and looks, gives frames. The fit decides every place; a frame says how it is inked.
"""
