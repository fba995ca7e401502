"""The print desk: what is to be printed, on which sheets, and what is to be swapped for it."""
