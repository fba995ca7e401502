from __future__ import annotations

import pytest

from service.handling.presume.rules_specimens import SPECIMENS
from tests.handling.presume.twins import Twin, rules_for

TWINS = (
    Twin(
        "arsenic-taxidermy",
        "mounted fish | Pike in a glazed case | 1911",
        "pole | Fishing pike pole | 1911",
    ),
    Twin("arsenic-taxidermy", "taxidermy | Otter | before 1980", "taxidermy | Otter | 1981"),
    Twin("arsenic-taxidermy", "| Stuffed owls under a dome", "| Stuffed owls, soft toys"),
    Twin("arsenic-taxidermy", "bird skin | Gannet, study skin", "photograph | A stuffed gannet"),
    Twin(
        "arsenic-taxidermy",
        "trophy | Mounted stag's head | about 1985",
        "tackle | Mounted fish hooks on a card",
    ),
    Twin(
        "arsenic-herbarium",
        "herbarium sheet | Sea holly | 1902",
        "herbarium sheet | Sea holly | 1985",
    ),
    Twin("arsenic-herbarium", "| Pressed plants", "cabinet | Herbarium cabinet"),
    Twin(
        "mercury-specimens",
        "herbarium sheet | Sea holly | 1850",
        "herbarium sheet | Sea holly | 1901",
    ),
    Twin("mercury-specimens", "stuffed heron | Heron | late 18th century", "stuffed heron | Heron"),
    Twin("fluid-specimens", "jar | Squid, wet specimen", "jar | Squid, dry"),
    Twin("fluid-specimens", "jar | Squid | | glass; formalin", "jar | Squid | | glass; water"),
    Twin("unknown-fluid", "vial | Vials | | glass; fluid not known", "vial | Vials | | glass; oil"),
    Twin("poisoned-point", "blowpipe dart | Dart", "dart | Dart for a board"),
    Twin("poisoned-point", "arrow | Arrow | | wood; curare", "arrow | Arrow | | wood; feather"),
    Twin("naphthalene-named", "cloak | Cloak | | wool; camphor", "chest | Chest | | camphor wood"),
    Twin("ddt-named", "tin | Tin of DDT powder", "tin | Tin of talcum powder"),
    Twin("human-remains", "| Human skull", "box | Box for a human skull"),
    Twin("human-remains", "human skull | Skull", "skull | Skull of a seal"),
    Twin("human-remains", "| Human bones from the shore", "model | Human skull | | plaster"),
    Twin("cyanide", "killing jar | Killing jar", "jar | Jam jar"),
    Twin("strychnine", "tin | Tin | | tinplate; strychnine", "tin | Tin | | tinplate"),
)


@pytest.mark.parametrize("twin", TWINS, ids=lambda twin: twin.about)
def test_a_rule_is_about_one_twin_only(twin: Twin) -> None:
    """The record that the guidance means gets its hazard; the one just beside it does not."""
    assert twin.code in rules_for(twin.about)
    assert twin.code not in rules_for(twin.beside)


def test_every_rule_has_its_twins() -> None:
    """No rule stands untried."""
    assert {twin.code for twin in TWINS} == {one.rule.code for one in SPECIMENS}
