from __future__ import annotations

from dataclasses import FrozenInstanceError

import pytest

from service.cards.compose.contents_list import compose_contents_list
from service.cards.compose.cover_card import compose_cover_card
from service.cards.compose.end_label import compose_end_labels
from service.cards.compose.lid_card import compose_lid_card
from service.records.record import PlaceRecord
from tests.contents.made import MUSEUM, objects, packing


def test_a_lid_card_names_its_objects_layer_by_layer() -> None:
    """The objects of a card are those of its layers, in order."""
    places = [PlaceRecord("1987.412.1", layer=2), PlaceRecord("1987.412.2")]
    card = compose_lid_card(packing(objects(2), places=places), MUSEUM)
    assert [len(layer.objects) for layer in card.layers] == [1, 1]
    assert [item.object_number for item in card.objects] == ["1987.412.2", "1987.412.1"]


def test_cards_know_their_kind_and_never_change() -> None:
    """The kind of a card follows from what it is; a card once composed stays."""
    made = packing(objects(1))
    cards = (
        compose_lid_card(made, MUSEUM),
        compose_end_labels(made, MUSEUM)[0],
        compose_cover_card(made, MUSEUM),
        compose_contents_list(made, MUSEUM),
    )
    assert [card.kind for card in cards] == ["lid-card", "end-label", "cover-card", "contents-list"]
    with pytest.raises(FrozenInstanceError):
        cards[0].count_words = "2 objects"  # type: ignore[misc] # what must fail
