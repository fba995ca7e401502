"""What lies where: records of packings matched with the objects and containers they name.

Takes a `Collection`; gives packings in order with their objects in layers, nested containers and
weights, and findings for what does not agree. Never words a card.
"""
