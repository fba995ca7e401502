"""What one does with users: add, sign in, hand out tokens, sign in a telephone."""
