"""Tests for telling what changed in the head of a card and in the fields of its kind."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.changes.change import Urgency
from service.records.measures import Grid
from service.records.record import Collection, PlaceRecord, Questions
from tests.cards.changes.cases import (
    BOX,
    JAR,
    LEAD,
    PLACES,
    changed,
    collection,
    compare,
    words,
)
from tests.contents.made import MUSEUM

OPEN = replace(MUSEUM, show_location=True)

HEAD = {
    "container title": (
        collection(box=replace(BOX, title="Finds")),
        "container title changed from 'Small finds' to 'Finds'",
    ),
    "museum": (
        collection(museum=replace(MUSEUM, name="Harbour Museum")),
        f"name of the museum changed from '{MUSEUM.name}' to 'Harbour Museum'",
    ),
    "address": (
        collection(
            museum=replace(
                MUSEUM, container_address="https://portmerrow.example/{container_number}"
            )
        ),
        (
            "address in the symbol changed from 'https://collections.example/c/B-042'"
            " to 'https://portmerrow.example/B-042'"
        ),
    ),
    "whom to ask": (
        collection(box=replace(BOX, questions=Questions("Textiles desk"))),
        "Textiles desk",
    ),
}


@pytest.mark.parametrize("kind", ["lid", "end", "list"])
@pytest.mark.parametrize(("after", "reason"), HEAD.values(), ids=HEAD)
def test_the_head_is_compared(kind: str, after: Collection, reason: str) -> None:
    """Every kind of card tells what changed in what all of them carry."""
    (change,) = compare(kind, collection(), after)
    assert reason in change.words
    assert change.urgency is Urgency.WORDING


def test_a_location_is_told_only_inside() -> None:
    """Where the museum prints locations a move is told, but not on paper that anybody sees."""
    before = collection(museum=OPEN, box=replace(BOX, location=("Store 2", "Bay 4")))
    after = collection(museum=OPEN, box=replace(BOX, location=("Store 3",)))
    (change,) = compare("lid", before, after)
    assert change.words == "location changed from 'Store 2, Bay 4' to 'Store 3'"
    assert change.outside_words == "location changed"


def test_a_location_that_is_not_printed_makes_no_card_wrong() -> None:
    """A container that moves keeps its cards where they say nothing of the place."""
    assert words("lid", collection(box=replace(BOX, location=("Store 3",)))) == []


def test_compartments_are_told() -> None:
    """Another map of compartments is another card."""
    one = (PlaceRecord("1987.412.9", compartment="A1"),)
    before = collection(places=one, box=replace(BOX, compartments=Grid(2, 2)))
    after = collection(places=one, box=replace(BOX, compartments=Grid(3, 2)))
    (change,) = compare("lid", before, after)
    assert change.words == "grid of compartments changed"


def test_a_cover_card_tells_of_its_garment() -> None:
    """Period, accessories and the photo of the back belong to the garment it shows."""
    one = PLACES[:1]
    after = collection(changed(JAR, period="1890s"), places=one)
    assert words("cover", after, before=collection(places=one)) == [
        "period of 1987.412.9 added: '1890s'"
    ]


def test_the_count_is_told_where_nothing_else_tells_it() -> None:
    """An end label names no objects, so that their number is what it tells."""
    after = collection(changed(LEAD, weight=JAR.weight), places=PLACES[:1])
    assert "count of objects changed from '2 objects' to '1 object'" in words("end", after)
    assert not any("count" in reason for reason in words("lid", after))
