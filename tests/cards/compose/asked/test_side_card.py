from __future__ import annotations

from dataclasses import replace

from service.cards.compose.asked.side_card import compose_side_card
from service.cards.compose.lid_card import compose_lid_card
from service.records.record import PhotoReference, PlaceRecord
from tests.contents.made import MUSEUM, hazard, objects, packing

ONE, TWO = objects(2)
PLACES = [PlaceRecord(ONE.object_number, layer=2), PlaceRecord(TWO.object_number)]


def test_it_says_what_the_lid_card_says_without_photos() -> None:
    """Handling and the order of layers are the same; no photo is named."""
    made = packing([ONE, replace(TWO, hazards=(hazard("lead"),))], places=PLACES)
    side, lid = compose_side_card(made, MUSEUM), compose_lid_card(made, MUSEUM)
    assert (side.handling, side.count_words) == (lid.handling, lid.count_words)
    assert [layer.heading for layer in side.layers] == ["Layer 1, top", "Layer 2, bottom"]
    assert [item.object_number for item in side.objects] == ["1987.412.2", "1987.412.1"]
    assert {(item.photo, item.photo_words) for item in side.objects} == {("", "")}
    assert (side.orientation, side.head.query[:4]) == ("", "r=3&")


def test_another_photo_makes_no_side_card_wrong() -> None:
    """It shows none."""
    other = replace(ONE, photos=(PhotoReference("other.jpg"),))
    before, after = (compose_side_card(packing([one]), MUSEUM) for one in (ONE, other))
    assert before == after


def test_what_may_not_be_shown_stays_unnamed() -> None:
    """A restricted object has its number and no title."""
    card = compose_side_card(packing([replace(ONE, title="Mask", restricted=True)]), MUSEUM)
    (item,) = card.objects
    assert (item.title, item.photo_words) == ("Restricted: ask first", "not shown")
