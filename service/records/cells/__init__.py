"""What people write into one cell: measures, weights, dates, lists and words.

Takes one `Cell`; gives the value understood, and notes a finding where it was not. Never looks at
another cell.
"""
