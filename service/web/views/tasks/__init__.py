"""Long work: what is under way, how far it is, and what came of it."""
