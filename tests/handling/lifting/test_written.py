from __future__ import annotations

import pytest

from service.contents.weights import Certainty, ContainerWeight
from service.handling.lifting.written import compare_kg, explain_gap, floor_kg, format_kg


@pytest.mark.parametrize(
    ("mass_g", "figure"),
    [
        (0.0, "0.0"),
        (4.0, "0.004"),
        (99.0, "0.099"),
        (560.0, "0.6"),
        (1_240.0, "1.2"),
        (19_940.0, "19.9"),
        (20_000.0, "20"),
        (25_600.0, "26"),
    ],
)
def test_figures_on_a_card(mass_g: float, figure: str) -> None:
    """One decimal below 20 kg, whole kilograms above, and nothing light becomes nothing."""
    assert format_kg(mass_g) == figure


@pytest.mark.parametrize(
    ("limit_kg", "floored_kg"), [(80 / 3, 26.6), (7 * 0.9, 6.3), (4.41, 4.4), (13.0, 13.0)]
)
def test_figures_not_to_be_passed_are_rounded_down(limit_kg: float, floored_kg: float) -> None:
    """A printed figure is never higher than the one that was worked out."""
    assert floor_kg(limit_kg) == floored_kg


@pytest.mark.parametrize(
    ("mass_g", "limit_kg", "words"),
    [
        (16_400, 13.0, "16.4 kg: over 13 kg"),
        (13_000, 13.0, "13.0 kg: within 13 kg"),
        (13_010, 13.0, "13.0 kg: just over 13 kg"),
        (22_600, 22.5, "22.6 kg: over 22.5 kg"),
        (40, 3.0, "0.04 kg: within 3 kg"),
        (900, 0.0, "0.9 kg: no weight is recommended"),
    ],
)
def test_a_weight_is_compared_as_it_is_read(mass_g: float, limit_kg: float, words: str) -> None:
    """The words never seem to contradict the figures beside them."""
    assert compare_kg(mass_g, limit_kg) == words


def test_what_was_not_weighed_is_named() -> None:
    """Objects and container are told apart."""
    weight = ContainerWeight(500, Certainty.AT_LEAST, 2, 6, tare_known=False)
    assert explain_gap(weight) == "at least: 2 of 6 not weighed, container not weighed"
