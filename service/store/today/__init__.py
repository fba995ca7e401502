"""What the cards of every container would say now, by fingerprint, and which are to be asked anew.

Only a note to find out-of-date cards quickly: it can be thrown away and made again at any time.
"""
