"""A container's record in a form: written as people type it, read as a spreadsheet is read."""
