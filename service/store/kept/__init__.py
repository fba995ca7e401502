"""What is noted beside records and packings: slips, checks, sheets, imports, replies, tasks."""
