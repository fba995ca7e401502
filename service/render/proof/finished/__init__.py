"""The proof of a finished file: every proved plate stands where it belongs, and nothing else does.

Reads the file by a reader of its own, and looks at it by PDFium. Knows geometry, not the composer.
"""
