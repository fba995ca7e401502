"""Handling knowledge: hazards, cautions and lifting, each entry with its source.

Takes records, packings and weights; gives words and marks. Repeats what is recorded with its state
and defers to local rules and qualified people; never says that a thing does no harm. Pure.
"""
