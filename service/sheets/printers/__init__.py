"""Printers as they were measured: where each tray prints, what it cannot reach, sheets half used.

Takes and gives values and the text they are kept in; whoever calls reads and writes the file.
"""
