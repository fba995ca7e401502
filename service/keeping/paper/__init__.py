"""Sheets that a museum measured itself, and printers as they were measured."""
