"""Paths of people: signing in and out, users, tokens of programs, pairings of devices."""
