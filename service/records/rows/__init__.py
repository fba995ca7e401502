"""One record before it is understood: rows and cells, and the notebook of what was noticed.

Takes the raw values of a table row or a JSON object; gives cleaned text with its place. Never
decides what a text means.
"""
