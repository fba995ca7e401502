"""Commands around what is taken in: mappings of headings, imports taken back, how photos show."""
