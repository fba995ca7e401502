"""What the museum wrote down: records as read, nothing added.

Takes the bytes or text of a JSON document, CSV files or a workbook; gives a `Collection` of frozen
records and the findings met on the way. Never reads a disk or a clock, never decides what a card
says, never drops a row without a finding.
"""
