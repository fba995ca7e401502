"""What a screen shows: pictures of pages of real PDFs, drawn in child processes.

PDFium serves one thread of a process at a time, and a print run proves its files with it.
"""
