from __future__ import annotations

import pytest

from service.handling.presume.rules_vessels import VESSELS
from tests.handling.presume.twins import Twin, rules_for

TWINS = (
    Twin("medicine", "medicine chest | Medicine chest", "chest | Sea chest"),
    Twin(
        "controlled-drug",
        "tube | Tablets | | glass; morphine sulphate",
        "tube | Tablets | | glass; sugar",
    ),
    Twin("controlled-drug", "tin | Tin of opium", "pipe | Opium pipe"),
    Twin("poison", "bottle | Poison bottle, ribbed", "bottle | Ink bottle, ribbed"),
    Twin("carbon-tetrachloride", "fire grenade | Glass fire grenade", "grenade | Grenade"),
    Twin("pressurised", "fire extinguisher | Extinguisher", "bracket | Fire extinguisher bracket"),
)


@pytest.mark.parametrize("twin", TWINS, ids=lambda twin: twin.about)
def test_a_rule_is_about_one_twin_only(twin: Twin) -> None:
    """The record that the guidance means gets its hazard; the one just beside it does not."""
    assert twin.code in rules_for(twin.about)
    assert twin.code not in rules_for(twin.beside)


def test_every_rule_has_its_twins() -> None:
    """No rule stands untried."""
    assert {twin.code for twin in TWINS} == {one.rule.code for one in VESSELS}
