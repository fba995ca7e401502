"""Brings a store of any earlier form, or an empty database, to the form of today."""
