from __future__ import annotations

import math

import pytest

from service.handling.lifting.niosh import (
    Grip,
    Lift,
    estimate_reach_mm,
    find_index,
    find_multipliers,
    recommend_kg,
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
