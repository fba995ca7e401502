"""Lifting advice against the filter of HSE INDG143 (2020) and the teams of HSE L23.

The figures were read in texts that restate both; the leaflets themselves were not seen.
"""

from __future__ import annotations

import itertools

import pytest

from service.contents.weights import Certainty, ContainerWeight
from service.handling.lifting import advise_lift
from service.handling.lifting.hse import (
    HandPlace,
    Reach,
    Zone,
    find_cell_kg,
    find_limit_kg,
    keep_ratio,
)
from service.handling.lifting.team import team_limit_kg
from service.handling.lifting.written import floor_kg
from service.records.museum.lifting import USUAL_LIFTING, FilterColumn
from service.records.record import ContainerRecord

# Women, above the shoulder and arms out 3 kg, above the shoulder and close 7 kg, between knuckle
# and elbow and close 16 kg; 25 kg is the largest cell of the whole filter.
FIGURES_KG = (3.0, 7.0, 16.0, 25.0)


def advice(mass_kg: float) -> str:
    """Give the advice for a container that was weighed."""
    weight = ContainerWeight(mass_kg * 1000, Certainty.MEASURED, 0, 1, tare_known=True)
    return advise_lift(weight, ContainerRecord("B-1"), USUAL_LIFTING).advice


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


# Zone from the top of the figure: men close, men arms out, women close, women arms out.
CELLS_KG = (
    (Zone.ABOVE_SHOULDER, 10, 5, 7, 3),
    (Zone.SHOULDER_TO_ELBOW, 20, 10, 13, 7),
    (Zone.ELBOW_TO_KNUCKLE, 25, 15, 16, 10),
    (Zone.KNUCKLE_TO_SHIN, 20, 10, 13, 7),
    (Zone.BELOW_SHIN, 10, 5, 7, 3),
)
CELLS = [
    (zone, column, reach, row[at])
    for zone, *row in CELLS_KG
    for at, (column, reach) in enumerate(itertools.product(reversed(FilterColumn), Reach))
]
FIRST = HandPlace(Zone.ELBOW_TO_KNUCKLE, Reach.CLOSE)
LAST = HandPlace(Zone.SHOULDER_TO_ELBOW, Reach.ARMS_OUT)


@pytest.mark.parametrize(("zone", "column", "reach", "figure_kg"), CELLS)
def test_the_twenty_cells(zone: Zone, column: FilterColumn, reach: Reach, figure_kg: float) -> None:
    """HSE INDG143: every cell of the filter, five zones by two distances by two columns."""
    assert len(CELLS) == 20
    assert find_cell_kg(HandPlace(zone, reach), column) == figure_kg


@pytest.mark.parametrize(
    ("twist_deg", "lifts_per_min", "figure_kg"),
    [(0, 0.2, 7.0), (60, 0.2, 6.3), (60, 1.5, 4.41)],
    ids=["several zones", "twist", "twist and rate"],
)
def test_hands_that_pass_several_zones(
    twist_deg: float, lifts_per_min: float, figure_kg: float
) -> None:
    """HSE INDG143: from the waist (16 kg) to between shoulder and elbow, arms out (7 kg), is 7 kg.

    10 % off for a twist of 60 degrees, 30 % off for one or two lifts a minute; that both are
    multiplied is common practice, no source.
    """
    share_ratio = keep_ratio(twist_deg=twist_deg, lifts_per_min=lifts_per_min)
    found_kg = find_limit_kg((FIRST, LAST), FilterColumn.LOWER, share_ratio=share_ratio)
    assert found_kg == pytest.approx(figure_kg, abs=0.005)


@pytest.mark.parametrize(
    ("twist_deg", "off_ratio"), [(45, 0.0), (46, 0.1), (90, 0.1), (91, 0.2), (180, 0.2)]
)
def test_twist_takes_off(twist_deg: float, off_ratio: float) -> None:
    """HSE INDG143: 10 % off beyond 45 degrees, 20 % off beyond 90."""
    kept_ratio = keep_ratio(twist_deg=twist_deg, lifts_per_min=0.2)
    assert kept_ratio == pytest.approx(1 - off_ratio)


@pytest.mark.parametrize(
    ("lifts_per_min", "off_ratio"),
    [(0.5, 0.0), (1, 0.3), (2, 0.3), (5, 0.5), (8, 0.5), (12.1, 0.8), (20, 0.8)],
)
def test_rate_takes_off(lifts_per_min: float, off_ratio: float) -> None:
    """HSE INDG143: none to 30 an hour; 30, 50, 80 % off for 1-2, 5-8, more than 12 a minute."""
    kept_ratio = keep_ratio(twist_deg=0, lifts_per_min=lifts_per_min)
    assert kept_ratio == pytest.approx(1 - off_ratio)


@pytest.mark.parametrize(
    ("each_kg", "team_kg"),
    [((20, 20), 26.67), ((20, 20, 20), 30.0), ((25, 16), 27.33)],
    ids=["two", "three", "unequal"],
)
def test_teams(each_kg: tuple[float, ...], team_kg: float) -> None:
    """HSE L23, regulation 4: two lift two thirds of their sum, three half of it."""
    assert team_limit_kg(each_kg) == pytest.approx(team_kg, abs=0.005)


def test_a_team_is_printed_rounded_down() -> None:
    """26.67 kg print as 26.6, never as 26.7."""
    assert floor_kg(team_limit_kg((20, 20))) == 26.6


@pytest.mark.parametrize("people", [4, 5])
def test_larger_teams_are_refused(people: int) -> None:
    """HSE L23: more than four are unlikely to work; for four no share is published."""
    with pytest.raises(ValueError, match="not a plan"):
        team_limit_kg([20.0] * people)
