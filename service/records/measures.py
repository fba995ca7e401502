"""Measures of objects and containers, as records state them."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Measure:
    """One measure in mm with its label ("height", "width", "depth", "diameter", ... or "")."""

    label: str
    length_mm: float


@dataclass(frozen=True, slots=True)
class Grid:
    """Compartments of a layer: rows are lettered from A, columns numbered from 1."""

    columns: int
    rows: int
