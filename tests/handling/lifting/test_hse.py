from __future__ import annotations

import pytest

from service.handling.lifting.hse import (
    HandPlace,
    Reach,
    Zone,
    find_limit_kg,
    find_zone,
    keep_ratio,
)
from service.records.museum.lifting import FilterColumn


@pytest.mark.parametrize(
    ("hand_height_mm", "zone"),
    [
        (2000, Zone.ABOVE_SHOULDER),
        (1215, Zone.ABOVE_SHOULDER),
        (1214, Zone.SHOULDER_TO_ELBOW),
        (930, Zone.SHOULDER_TO_ELBOW),
        (929, Zone.ELBOW_TO_KNUCKLE),
        (826, Zone.ELBOW_TO_KNUCKLE),
        (825, Zone.KNUCKLE_TO_SHIN),
        (301, Zone.KNUCKLE_TO_SHIN),
        (300, Zone.BELOW_SHIN),
        (0, Zone.BELOW_SHIN),
    ],
)
def test_at_a_boundary_the_harsher_zone_begins(hand_height_mm: float, zone: Zone) -> None:
    """From memory: 1215 and 930 mm of a short woman, 825 and half of 600 mm of a tall man."""
    assert find_zone(hand_height_mm) is zone


def test_a_limit_needs_a_place() -> None:
    """Hands that are nowhere have no figure."""
    with pytest.raises(ValueError, match="empty"):
        find_limit_kg((), FilterColumn.LOWER, share_ratio=1.0)


def test_one_place_is_its_own_figure() -> None:
    """With one place there is nothing to choose from."""
    place = HandPlace(Zone.BELOW_SHIN, Reach.CLOSE)
    assert find_limit_kg((place,), FilterColumn.LOWER, share_ratio=0.5) == 3.5


@pytest.mark.parametrize(
    ("twist_deg", "lifts_per_min", "kept_ratio"),
    [
        (45, 0.5, 1.0),
        (45.1, 0.5, 0.9),
        (90, 0.5, 0.9),
        (90.1, 0.5, 0.8),
        (0, 0.501, 0.7),
        (0, 2, 0.7),
        (0, 2.001, 0.5),
        (0, 8, 0.5),
        (0, 8.001, 0.2),
        (0, 13, 0.2),
    ],
)
def test_gaps_between_rates_take_the_harsher_step(
    twist_deg: float, lifts_per_min: float, kept_ratio: float
) -> None:
    """Each step begins just above the last rate or angle that is published for the milder one."""
    assert keep_ratio(twist_deg=twist_deg, lifts_per_min=lifts_per_min) == kept_ratio
