"""The text of a face: what each line of glyphs shows, and whether the page asks for it.

Takes lines of a page and of a plate, gives faults. Knows nothing of the raster.
"""
