from __future__ import annotations

import pytest

from service.geometry import Size
from service.handling.lifting.place import find_place_limit
from service.records.museum.lifting import USUAL_LIFTING, Duration, LiftingChoices, LiftMethod
from service.records.record import ContainerRecord

BOX = ContainerRecord("B-1", lid_size=Size(300, 400), end_size=Size(300, 200))


@pytest.mark.parametrize(
    ("hand_height_mm", "limit_kg"), [(100, 7), (500, 13), (900, 16), (1000, 13), (1500, 7)]
)
def test_the_way_to_the_waist_has_the_smaller_figure(
    hand_height_mm: float, limit_kg: float
) -> None:
    """Of shelf and waist the shelf has the smaller figure, wherever it is."""
    assert find_place_limit(BOX, hand_height_mm, USUAL_LIFTING).limit_kg == limit_kg


def test_the_lower_end_of_a_niosh_lift_governs() -> None:
    """At 1500 mm VM .775 and DM .88 leave less than at the waist, where VM is 1."""
    found = find_place_limit(BOX, 1500, LiftingChoices(method=LiftMethod.NIOSH))
    assert found.limit_kg == 9.8  # 23 x .625 x .775 x .88 = 9.8037
    assert found.words == "for hands 1500 mm up and 400 mm out"
    assert found.explain(9_801).endswith(
        "just over 9.8 kg for hands 1500 mm up and 400 mm out, lifting index 1.1"
    )
    assert found.explain(9_800).endswith("lifting index 1.0")


def test_a_long_day_leaves_less() -> None:
    """Table 5: up to eight hours at 0.2 lifts a minute leave .85."""
    choices = LiftingChoices(method=LiftMethod.NIOSH, duration=Duration.LONG)
    assert find_place_limit(BOX, 1500, choices).limit_kg == 8.3  # 9.8037 x .85 = 8.333


def test_twisting_leaves_less() -> None:
    """NIOSH: 45 degrees leave .856, wherever on the way one turns."""
    choices = LiftingChoices(method=LiftMethod.NIOSH, twist_deg=45)
    assert find_place_limit(BOX, 1500, choices).limit_kg == 8.3  # 9.8037 x .856 = 8.392


@pytest.mark.parametrize(
    ("twist_deg", "lifts_per_min", "off"), [(0, 15, "80 %"), (90, 15, "82 %"), (90, 0.2, "10 %")]
)
def test_what_is_off_is_said(twist_deg: float, lifts_per_min: float, off: str) -> None:
    """HSE INDG143: more than 45 degrees take 10 %, more than 12 lifts a minute 80 %.

    That both together leave .9 x .2 is our reading.
    """
    choices = LiftingChoices(twist_deg=twist_deg, lifts_per_min=lifts_per_min)
    words = find_place_limit(BOX, 900, choices).words
    assert words.endswith(f", {off} already off for twisting or lifting often")
