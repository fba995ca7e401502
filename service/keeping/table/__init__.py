"""The packing table: one thing after another put down with its photo, and taken up again."""
