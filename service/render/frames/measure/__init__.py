"""Specimens drawn by the layout engine, and what their ink says of the template.

Takes looks, gives moulds and static ink, or names what a slot cannot keep.
"""
