"""Papers that belong to no card: lists and sheets to walk the store with, printed as cards are."""
