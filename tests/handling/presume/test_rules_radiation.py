from __future__ import annotations

import pytest

from service.handling.presume.rules_radiation import RADIATION
from tests.handling.presume.twins import Twin, rules_for

TWINS = (
    Twin(
        "radium-dials",
        "compass card | Luminous compass card | 1917",
        "compass card | Compass card | 1917",
    ),
    Twin(
        "radium-dials",
        "alarm clock | Alarm clock, luminous hands",
        "alarm clock | Luminous alarm clock | 1985",
    ),
    Twin(
        "radium-dials",
        "watch | Watch | 1979 | steel; luminous paint",
        "watch | Watch | 1980 | steel; luminous paint",
    ),
    Twin(
        "radium-dials",
        "watch | Watch with luminous dial | 1960",
        "watch | Tritium watch with luminous dial | 1960",
    ),
    Twin(
        "radium-named",
        "sign | Exit sign | | tinplate; radium paint",
        "sign | Exit sign | | tinplate; white paint",
    ),
    Twin("thorium-mantles", "gas mantle | Gas mantles, boxed", "gas lamp | Gas lamp"),
    Twin("uranium-glass", "figurine | Uranium glass swan", "figurine | Glass swan"),
    Twin("uranium-glass", "bowl | Bowl | | uranium glass", "bowl | Bowl | | green glass"),
    Twin(
        "radioactive-minerals",
        "mineral | Pitchblende from the mine",
        "mineral | Galena from the mine",
    ),
    Twin("polonium", "brush | Anti-static brush | 1960s", "brush | Anti-static brush"),
    Twin("asbestos-named", "glove | Glove | | asbestos; leather", "glove | Glove | | leather"),
    Twin("asbestos-named", "mineral | Chrysotile", "brake pad | Asbestos-free brake pad"),
    Twin("asbestos-goods", "gas mask | Gas mask in its box", "gas mask bag | Gas mask bag"),
    Twin("radium-dials", "clock | Clock, glowing hands | 1890", "clock | Clock | 1890"),
    Twin("asbestos-goods", "stove | Paraffin stove | 1930s", "stove | Cast-iron stove | 1840"),
    Twin("asbestos-goods", "stove | Stove | 1878", "stove | Stove | 1877"),
    Twin("asbestos-goods", "toaster | Electric toaster | 1955", "rack | Toast rack | 1955"),
    Twin(
        "asbestos-goods",
        "ironing board | Ironing board | 1999",
        "ironing board | Ironing board | 2000",
    ),
)


@pytest.mark.parametrize("twin", TWINS, ids=lambda twin: twin.about)
def test_a_rule_is_about_one_twin_only(twin: Twin) -> None:
    """The record that the guidance means gets its hazard; the one just beside it does not."""
    assert twin.code in rules_for(twin.about)
    assert twin.code not in rules_for(twin.beside)


def test_every_rule_has_its_twins() -> None:
    """No rule stands untried."""
    assert {twin.code for twin in TWINS} == {one.rule.code for one in RADIATION}
