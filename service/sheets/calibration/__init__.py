"""How far a printer is off: a sheet of crosses, what was measured on it, and the map that fits.

Takes measurements; gives where ink lands and where it must be sent instead.
"""
