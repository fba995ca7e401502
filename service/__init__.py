"""Underlid prints what a closed museum box, cover or tube must tell its reader."""
