"""Files as they come: bytes to text, text to tables, workbooks and documents to rows.

Takes bytes; gives rows with the place of every cell. Never knows what a column means beyond its
name.
"""
