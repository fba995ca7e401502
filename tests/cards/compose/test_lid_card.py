from __future__ import annotations

from dataclasses import replace

from service.cards.compose.lid_card import ORIENTATION, compose_lid_card
from service.records.measures import Grid
from service.records.record import ContainerKind, ContainerRecord, PlaceRecord
from tests.contents.made import BOX, MUSEUM, objects, packing


def test_one_layer_needs_no_heading() -> None:
    """A plain box says how many objects it holds, and which edge is which."""
    card = compose_lid_card(packing(objects(2)), MUSEUM)
    assert [layer.heading for layer in card.layers] == [""]
    assert (card.count_words, card.grid, card.orientation) == ("2 objects", None, ORIENTATION)
    assert card.head.check_letters in card.head.query


def test_layers_are_named_from_the_top() -> None:
    """The first is the top, the last the bottom, and the count says how many there are."""
    places = [PlaceRecord(f"1987.412.{n}", layer=n) for n in (1, 2, 3)]
    card = compose_lid_card(packing(objects(3), places=places), MUSEUM)
    headings = [layer.heading for layer in card.layers]
    assert headings == ["Layer 1, top", "Layer 2", "Layer 3, bottom"]
    assert card.count_words == "3 objects · 3 layers"


def test_nested_containers_follow_under_their_own_heading() -> None:
    """What lies in a tray names the tray, and the count names it too."""
    tray = ContainerRecord("T-1", ContainerKind.DRAWER, "Pins")
    made = replace(packing(objects(1)), nested=(packing(objects(2)[1:], tray),))
    card = compose_lid_card(made, MUSEUM)
    assert [layer.heading for layer in card.layers] == ["Layer 1, top", "In drawer T-1: Pins"]
    assert card.layers[1].objects[0].place == "T-1"
    assert card.count_words == "2 objects · holds T-1"


def test_compartments_are_a_map_only_on_one_layer() -> None:
    """Two layers cannot share one map."""
    box = replace(BOX, compartments=Grid(3, 2))
    flat = compose_lid_card(packing(objects(2), box), MUSEUM)
    places = [PlaceRecord(f"1987.412.{n}", layer=n) for n in (1, 2)]
    deep = compose_lid_card(packing(objects(2), box, places=places), MUSEUM)
    assert (flat.grid, deep.grid) == (Grid(3, 2), None)
    assert flat.count_words == "2 objects · 3 × 2 compartments"  # noqa: RUF001 - as printed


def test_an_empty_box_has_a_card() -> None:
    """It says that there is nothing in it."""
    card = compose_lid_card(packing(()), MUSEUM)
    assert (card.count_words, card.objects) == ("0 objects", ())
