"""Fitted cards to proven files: photos as fine as needed, plates found or made, sheets written.

Takes cards as they come, gives files on disk. Decides nothing of what a card says or where.
"""
