"""One container as it is now: what lies in it, its warnings, its cards, and how it came to that."""
