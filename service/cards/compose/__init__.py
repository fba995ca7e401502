"""Wording: a packing and the museum's choices become the card of each kind."""
