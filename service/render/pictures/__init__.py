"""From the photo a person took to the thumbnail a card prints.

Takes bytes of photos in whatever form; gives trimmed, upright sRGB JPEGs in fixed sizes and
findings about those that cannot be used. Decoding is done in child processes; an original is only
ever read.
"""
