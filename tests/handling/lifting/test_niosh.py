from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from service.handling.lifting.niosh import (
    Grip,
    Lift,
    estimate_reach_mm,
    find_index,
    find_multipliers,
    recommend_kg,
    weigh_rate,
)
from service.records.museum.lifting import Duration


def lift(
    *, reach_mm: float = 250, height_mm: float = 750, travel_mm: float = 250, twist_deg: float = 0
) -> Lift:
    """Make a lift that leaves all of the load constant but where it is told otherwise."""
    return Lift(reach_mm, height_mm, travel_mm, twist_deg, 0.2, Duration.SHORT, Grip.GOOD)


def test_the_best_lift_has_the_load_constant() -> None:
    """NIOSH 94-110: 23 kg where no multiplier takes anything away."""
    assert recommend_kg(lift()) == 23.0


@pytest.mark.parametrize(
    ("at_limit", "beyond"),
    [
        (lift(reach_mm=630), lift(reach_mm=630.1)),
        (lift(height_mm=1750), lift(height_mm=1750.1)),
        (lift(height_mm=0), lift(height_mm=-1)),
        (lift(travel_mm=1750), lift(travel_mm=1750.1)),
        (lift(twist_deg=135), lift(twist_deg=135.1)),
    ],
    ids=["reach", "height", "below the floor", "travel", "twist"],
)
def test_beyond_a_limit_nothing_is_left(at_limit: Lift, beyond: Lift) -> None:
    """NIOSH 94-110, pp. 8 to 15: within a limit something is recommended, beyond it nothing."""
    assert recommend_kg(at_limit) > 0
    assert recommend_kg(beyond) == 0


def test_near_and_short_lifts_give_no_bonus() -> None:
    """NIOSH 94-110: a reach or a travel below 25 cm counts as 25 cm."""
    near = find_multipliers(lift(reach_mm=100, travel_mm=0))
    assert (near.reach_ratio, near.travel_ratio) == (1.0, 1.0)


def test_reach_by_depth() -> None:
    """NIOSH 94-110, p. 8: 20 cm and half the depth, 25 cm and half the depth below 25 cm."""
    assert estimate_reach_mm(400, 250) == 400
    assert estimate_reach_mm(400, 249) == 450


def test_an_index_without_a_recommended_weight_has_no_end() -> None:
    """Nothing is the most that is recommended, so any load is too much."""
    assert find_index(0.1, 0.0) == math.inf


# Table 5 of NIOSH 94-110: lifts a minute, then up to one, two and eight hours, each with hands
# below 75 cm and from there up. Copied from the table by hand, a third of its rows.
TABLE_5 = {
    0.2: (1.00, 1.00, 0.95, 0.95, 0.85, 0.85),
    1: (0.94, 0.94, 0.88, 0.88, 0.75, 0.75),
    4: (0.84, 0.84, 0.72, 0.72, 0.45, 0.45),
    9: (0.52, 0.52, 0.30, 0.30, 0.00, 0.15),
    12: (0.37, 0.37, 0.00, 0.21, 0.00, 0.00),
    15: (0.00, 0.28, 0.00, 0.00, 0.00, 0.00),
}


@pytest.mark.parametrize("column", range(6))
@pytest.mark.parametrize("rate", TABLE_5)
def test_rows_of_the_frequency_table(rate: float, column: int) -> None:
    """At a row of table 5 its own figure counts, and fewer lifts than its first change nothing."""
    duration, high = list(Duration)[column // 2], bool(column % 2)
    assert weigh_rate(rate, duration, high=high) == TABLE_5[rate][column]
    assert weigh_rate(0.1, duration, high=high) == TABLE_5[0.2][column]


@pytest.mark.parametrize(
    ("rate", "expected"), [(0.3, 0.99), (0.7, 0.958), (1.5, 0.925), (5.25, 0.7875), (8.9, 0.528)]
)
def test_rates_between_rows(rate: float, expected: float) -> None:
    """NIOSH 94-110, p. 7: linear interpolation, here worked out by NumPy from the same rows."""
    rows, figures = [0.2, 0.5, 1, 2, 5, 6, 8, 9], [1.0, 0.97, 0.94, 0.91, 0.80, 0.75, 0.60, 0.52]
    assert np.interp(rate, rows, figures) == pytest.approx(expected)
    assert weigh_rate(rate, Duration.SHORT, high=True) == pytest.approx(expected)


def test_at_knuckle_height_hands_are_high() -> None:
    """NIOSH 94-110, tables 5 and 7: 75 cm itself belongs to the column from there up."""
    often = Lift(250, 750, 250, 0, 10, Duration.LONG, Grip.FAIR)
    assert find_multipliers(often).often_ratio == 0.13
    assert find_multipliers(often).grip_ratio == 1.00
    lower = find_multipliers(replace(often, height_mm=749))
    assert (lower.often_ratio, lower.grip_ratio) == (0.0, 0.95)
