from __future__ import annotations

import pytest

from service.contents.weights import Certainty, ContainerWeight
from service.handling.lifting import SOURCE, LiftAdvice, advise_lift, format_kg


def weight(
    mass_g: float,
    certainty: Certainty = Certainty.MEASURED,
    *,
    unweighed: int = 0,
    tare_known: bool = True,
) -> ContainerWeight:
    """Make a weight of a container with six objects."""
    return ContainerWeight(mass_g, certainty, unweighed, 6, tare_known)


@pytest.mark.parametrize(
    ("mass_g", "figure"),
    [
        (0.0, "0.0"),
        (4.0, "0.004"),
        (99.0, "0.099"),
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
    ("certainty", "qualifier"),
    [(Certainty.MEASURED, "weighed"), (Certainty.SUM, "sum of the records")],
)
def test_a_whole_weight_says_how_it_is_known(certainty: Certainty, qualifier: str) -> None:
    """What was weighed and what was added up are told apart, and the source is named."""
    found = advise_lift(weight(2_000.0, certainty))
    assert found == LiftAdvice("2.0", qualifier, "Keep close to the body.", SOURCE)


@pytest.mark.parametrize(
    ("unweighed", "tare_known", "qualifier"),
    [
        (2, True, "at least: 2 of 6 not weighed"),
        (0, False, "at least: container not weighed"),
        (2, False, "at least: 2 of 6 not weighed, container not weighed"),
    ],
    ids=["objects", "container", "both"],
)
def test_a_gap_is_named_and_gives_no_tier(
    unweighed: int, qualifier: str, *, tare_known: bool
) -> None:
    """A weight with a gap could be any weight above: the card asks to weigh first."""
    given = weight(500, Certainty.AT_LEAST, unweighed=unweighed, tare_known=tare_known)
    assert advise_lift(given) == LiftAdvice("0.5", qualifier, "Weigh before lifting.")


def test_an_unknown_weight_shows_no_figure() -> None:
    """A nought in figures would read as light."""
    found = advise_lift(weight(0, Certainty.UNKNOWN, unweighed=6, tare_known=False))
    assert found == LiftAdvice("", "Weight not known", "Weigh before lifting.")


def test_an_estimate_gives_no_tier() -> None:
    """A guessed weight is shown as a guess and asks to be checked on the scales."""
    found = advise_lift(weight(5_000, Certainty.ESTIMATED))
    assert found == LiftAdvice("5.0", "estimated", "Weigh before lifting.")
