"""Checks a packing against published and usual practice of storing things. Pure.

Takes a packing and what is known beside it (the date is handed in); gives findings, each from a
rule with its source. Where a record does not say, there is no finding, and that is no promise.
"""
