"""Tests for telling which objects came, went, moved or are shown in other words."""

from __future__ import annotations

import pytest

from service.records.record import Collection, ObjectRecord, PhotoReference, PlaceRecord
from tests.cards.changes.cases import JAR, LEAD, PLACES, changed, collection, words

TELEGRAPH = ObjectRecord("X.112", "Engine telegraph", weight=JAR.weight)
JAR_IN, LEAD_IN = PLACES

LID = {
    "added": (
        collection(TELEGRAPH, places=(*PLACES, PlaceRecord("X.112", layer=2))),
        "X.112 added",
    ),
    "taken out": (collection(places=(LEAD_IN,)), "1987.412.9 taken out"),
    "another compartment": (
        collection(places=(PlaceRecord("1987.412.9", compartment="B3"), LEAD_IN)),
        "1987.412.9 moved from A1 to B3",
    ),
    "another layer": (
        collection(places=(PlaceRecord("1987.412.9", layer=3, compartment="A1"), LEAD_IN)),
        "1987.412.9 moved from layer 1 A1 to layer 3 A1",
    ),
    "title": (
        collection(changed(JAR, title="Bait jar, stoneware")),
        "title of 1987.412.9 changed from 'Bait jar' to 'Bait jar, stoneware'",
    ),
    "photo": (
        collection(changed(JAR, photos=(PhotoReference("other.jpg"),))),
        "photo of 1987.412.9 changed",
    ),
    "photo gone": (collection(changed(JAR, photos=())), "photo of 1987.412.9 changed"),
    "note": (
        collection(places=(PlaceRecord("1987.412.9", compartment="A1", note="in tissue"), LEAD_IN)),
        "parts and note of 1987.412.9 added: 'in tissue'",
    ),
}


@pytest.mark.parametrize(("after", "reason"), LID.values(), ids=LID)
def test_what_changed_of_an_object_is_told(after: Collection, reason: str) -> None:
    """A registrar reads which object it is and what happened to it."""
    assert reason in words("lid", after)


def test_one_thing_is_told_once() -> None:
    """A photo that is gone also changes the words in its frame, which is one reason."""
    assert words("lid", collection(changed(JAR, photos=()))) == ["photo of 1987.412.9 changed"]


def test_another_part_of_an_object_is_told_as_such() -> None:
    """An object of which one part was there already is not added anew."""
    before = collection(places=(PlaceRecord("1931.14.2", ("a",)),))
    after = collection(places=(PlaceRecord("1931.14.2", ("a",)), PlaceRecord("1931.14.2", ("b",))))
    assert "another part of 1931.14.2 added" in words("lid", after, before=before)


def test_an_end_label_names_no_objects() -> None:
    """What an end label does not show makes no end label wrong."""
    assert words("end", collection(changed(LEAD, title="Hand lead line"))) == []


def test_details_of_the_contents_list_are_told() -> None:
    """The list says more, so more of it can go out of date."""
    after = collection(changed(LEAD, condition="flaking"))
    assert words("list", after) == ["details of 1931.14.2 added: 'Condition: flaking'"]
