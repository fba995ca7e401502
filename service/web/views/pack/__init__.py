"""The packing table: one container, one thing after another, with a phone in one hand."""
