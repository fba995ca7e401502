"""Lifting advice against the figures of the filter of HSE INDG143 (2020)."""

from __future__ import annotations

import itertools

import pytest

from service.contents.weights import Certainty, ContainerWeight
from service.handling.lifting import advise_lift

# Women, above the shoulder and arms out 3 kg, above the shoulder and close 7 kg, between knuckle
# and elbow and close 16 kg; 25 kg is the largest cell of the whole filter.
FIGURES_KG = (3.0, 7.0, 16.0, 25.0)


def advice(mass_kg: float) -> str:
    """Give the advice for a container that was weighed."""
    weight = ContainerWeight(mass_kg * 1000, Certainty.MEASURED, 0, 1, tare_known=True)
    return advise_lift(weight).advice


@pytest.mark.parametrize("figure_kg", FIGURES_KG)
def test_advice_changes_above_each_figure(figure_kg: float) -> None:
    """HSE INDG143: at a figure the filter still holds, just above it the next advice begins."""
    assert advice(figure_kg) != advice(figure_kg + 0.001)


def test_advice_changes_nowhere_else() -> None:
    """HSE INDG143: between the figures the advice is one and the same."""
    edges = (0.001, *FIGURES_KG, 60.0)
    for below_kg, above_kg in itertools.pairwise(edges):
        assert advice(below_kg + 0.001) == advice((below_kg + above_kg) / 2) == advice(above_kg)


def test_above_the_largest_figure_nobody_lifts_by_hand_unassessed() -> None:
    """HSE INDG143: above 25 kg no cell is left, so the card asks for an assessment and aids."""
    assert "assess before lifting" in advice(25.1)
    assert "Two people" in advice(16.1)
