"""The proof: what was read back from a file against the pages and sheets it was made of.

Gives a proof, or an error that names every fault with its page and place. Never changes a file.
"""
