"""Paths of long work: asked for, how far it is, what came of it, ended."""
