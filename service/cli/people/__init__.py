"""The commands of people: sharing the store, users, tokens."""
