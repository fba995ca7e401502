from __future__ import annotations

import pytest

from service.handling.presume.rules_arms import ARMS
from tests.handling.presume.twins import Twin, rules_for

TWINS = (
    Twin("ammunition", "shell case | Shell case, brass", "shell | Scallop shell"),
    Twin("ammunition", "cartridge | Rifle cartridges", "belt | Cartridge belt"),
    Twin("ammunition", "| Hand grenade", "| Glass fire grenade"),
    Twin(
        "ammunition",
        "powder flask | Flask | | copper; black powder",
        "powder flask | Flask | | copper",
    ),
    Twin("firearm", "pistol | Flintlock pistol", "holster | Pistol holster"),
    Twin("firearm", "| Rifle", "case | Case of a rifle"),
    Twin("firearm", "rifle | Rifle", "badge | Rifle Volunteers badge"),
    Twin("firearm", "| Musket", "| Musket balls"),
    Twin("firearm", "revolver | Revolver", "toy | Toy revolver"),
    Twin("picric-acid-named", "jar | Picric acid", "jar | Citric acid"),
    Twin("picric-acid-kits", "first aid kit | Kit | 1969", "first aid kit | Kit | 1970"),
    Twin("picric-acid-kits", "burn dressing | Dressing | 1930s", "burn dressing | Dressing"),
    Twin("needles", "syringe | Hypodermic syringe", "syringe | Garden syringe"),
    Twin("spring-loaded", "gin trap | Gin trap", "trap | Pony trap"),
    Twin("battery", "torch | Electric torch", "torch | Pitch torch"),
    Twin("electrical", "television set | Television set", "licence | Television licence"),
)


@pytest.mark.parametrize("twin", TWINS, ids=lambda twin: twin.about)
def test_a_rule_is_about_one_twin_only(twin: Twin) -> None:
    """The record that the guidance means gets its hazard; the one just beside it does not."""
    assert twin.code in rules_for(twin.about)
    assert twin.code not in rules_for(twin.beside)


def test_every_rule_has_its_twins() -> None:
    """No rule stands untried."""
    assert {twin.code for twin in TWINS} == {one.rule.code for one in ARMS}
