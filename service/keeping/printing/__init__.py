"""Print runs from the store, sheets that were spoiled, and cards that are attached."""
