from __future__ import annotations

import pytest

from service.handling.presume.rules_metals import METALS
from tests.handling.presume.twins import Twin, rules_for

TWINS = (
    Twin(
        "arsenic-pigments",
        "wallpaper | Roll | | paper; Scheele's green",
        "wallpaper | Roll | | paper; green earth",
    ),
    Twin(
        "arsenic-pigments",
        "painting | Bay | | canvas; orpiment",
        "dress | Dress | | silk, emerald green",
    ),
    Twin("mercury-instruments", "barometer | Stick barometer", "barometer | Aneroid barometer"),
    Twin("mercury-instruments", "thermometer | Sea thermometer", "case | Thermometer case"),
    Twin("mercury-named", "trough | Trough | | iron; mercury", "clock | Clock | | mercury gilding"),
    Twin(
        "mercury-compounds",
        "tin | Pigment | | tinplate; vermilion",
        "tin | Pigment | | tinplate; madder",
    ),
    Twin("mercury-hats", "felt hat | Black hat | 1890", "felt hat | Black hat | 1950"),
    Twin(
        "mercury-hats",
        "hat | Black hat | 1949 | felt; silk",
        "hat | Black hat | 1949 | straw; silk",
    ),
    Twin("mercury-hats", "bowler | Bowler | 1920s | felt", "bowler | Bowler | | felt"),
    Twin("mercury-hats", "hat | Beaver hat | 1820", "box | Felt hat box | 1820"),
    Twin("lead-named", "sinker | Sinker | | lead; iron", "goblet | Goblet | | lead glass"),
    Twin("lead-named", "toy soldier | Soldiers, painted", "toy soldier | Plastic toy soldiers"),
    Twin("selenium", "selenium rectifier | Rectifier", "rectifier | Rectifier"),
    Twin("beryllium", "fluorescent lamp | Lamp | 1948", "fluorescent lamp | Lamp | 1960"),
    Twin("beryllium", "fluorescent tube | Tube | 1930s", "fluorescent tube | Tube"),
)


@pytest.mark.parametrize("twin", TWINS, ids=lambda twin: twin.about)
def test_a_rule_is_about_one_twin_only(twin: Twin) -> None:
    """The record that the guidance means gets its hazard; the one just beside it does not."""
    assert twin.code in rules_for(twin.about)
    assert twin.code not in rules_for(twin.beside)


def test_every_rule_has_its_twins() -> None:
    """No rule stands untried."""
    assert {twin.code for twin in TWINS} == {one.rule.code for one in METALS}
