"""Faces on sheets: takes drawn faces and imposed sheets, gives the finished PDF.

Never looks at what a face says: it moves ink, names the file and tags it.
"""
