"""Writes a weight as it would be typed, so that reading it again gives the same."""

from __future__ import annotations

from service.records.record import Weight, WeightBasis
from service.units import kg_from_grams


def write_weight(weight: Weight | None) -> str:
    """Write a weight in kg to the gram, an estimate as one; empty where it is not known."""
    if weight is None:
        return ""
    about = "about " if weight.basis is WeightBasis.ESTIMATED else ""
    return f"{about}{kg_from_grams(weight.weight_g):.10g} kg"
