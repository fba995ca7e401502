"""The answer to a scanned card, small and readable by anybody who stands before the shelf."""
