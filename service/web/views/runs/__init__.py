"""Print runs: what was printed, its files and cards, and what became of them."""
