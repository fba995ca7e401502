"""What the museum has said and printed, kept: records, packings, print runs, and their history.

Takes records, packings and cards as values, with who does it and when; gives them back as they were
saved. Every change and the history that tells of it are one transaction. Knows SQL, and is the only
package that does; never reads a clock, never decides what a card says.
"""
