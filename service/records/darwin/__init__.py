"""Darwin Core Archives to rows of objects: a packed folder with meta.xml and its tables.

Takes bytes; gives rows with the columns of the object table. The form is that of the Darwin Core
text guide (TDWG).
"""
