"""The main job as one line: records and photos in, proven sheets out. Keeps nothing.

Takes a collection, photos and options; gives PDF files, findings and the proofs. Never stores.
"""
