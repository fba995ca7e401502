from __future__ import annotations

from dataclasses import replace

from service.cards.compose.asked.shoulder_tag import compose_shoulder_tag
from tests.contents.made import GARMENT_COVER, MUSEUM, hazard, objects, packing

ONE, TWO = objects(2)


def test_every_object_and_hazard_is_on_it() -> None:
    """It carries no revision, and so stays true until what it shows changes."""
    made = packing([replace(ONE, hazards=(hazard("lead"),)), TWO], GARMENT_COVER)
    tag = compose_shoulder_tag(made, MUSEUM)
    assert [item.object_number for item in tag.objects] == ["1987.412.1", "1987.412.2"]
    assert [warn.heading for warn in tag.hazards] == ["Lead confirmed"]
    assert (tag.head.container_number, tag.head.query) == ("G-7", "")
    assert {item.photo for item in tag.objects} == {""}


def test_what_may_not_be_announced_is_not() -> None:
    """A discreet hazard says only to ask, and its object has no title."""
    record = replace(ONE, title="Pistol holster", hazards=(hazard("firearm"),))
    tag = compose_shoulder_tag(packing([record], GARMENT_COVER), MUSEUM)
    assert [warn.heading for warn in tag.hazards] == ["Do not open"]
    assert tag.objects[0].title == "Do not open: ask first"
