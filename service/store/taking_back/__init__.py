"""Taking a whole import back: what it changed goes to what it was, as a change of its own."""
