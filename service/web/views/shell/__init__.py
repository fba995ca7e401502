"""What every page shares: its frame, styles and scripts, forms, notices and words."""
