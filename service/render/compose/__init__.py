"""Plates on sheets: takes finished ink and imposed sheets, writes the finished PDF.

Never looks at what a plate says: it moves ink, cuts fonts down, names the file and tags it.
"""
