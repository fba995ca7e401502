"""What independent readers find in a finished file: signs, pictures, glyphs, fonts, digests.

Takes a file, gives plain data in mm. Knows nothing of what was meant to be printed.
"""
