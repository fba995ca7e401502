"""What a card says, without positions: one file a kind.

Takes a packing and the museum's choices; gives a frozen card whose fingerprint changes when what it
says changes. Never measures, never draws.
"""
