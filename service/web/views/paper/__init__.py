"""Paper and printers: kinds of sheets as drawings, own sheets, what each printer does wrong."""
