"""Single cards for the screen: the ink of a print run, at the size that it would choose."""
