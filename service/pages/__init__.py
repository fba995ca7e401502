"""The fit: a card becomes pages on which every block has its place in mm.

Takes a card, a finished size and a ruler; gives pages whose text is already broken into lines.
Nothing is lost: what does not fit continues on another page of the same card. Never draws.
"""
