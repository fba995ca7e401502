"""Printed cards over HTTP: print runs, what became of each card, and the reprint list."""
