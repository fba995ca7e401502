"""Ink and pictures: the only package that runs the layout engine or decodes a photo.

Takes plain data (sheets, pages, template contexts) and bytes of photos; gives PDF bytes, thumbnails
and findings. Whatever may hang, crash or eat memory runs in a child process under limits. Knows
nothing of records and decides nothing of what a card says.
"""
