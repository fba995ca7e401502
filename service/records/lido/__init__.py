"""LIDO documents, 1.0 and 1.1, to rows of objects: one export file holds many records.

Takes bytes; gives rows with the columns of the object table. The elements are those of the schema
of the ICOM CIDOC working group on data harvesting; what has no column is never read.
"""
