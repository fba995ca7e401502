"""Tests for taking objects and their parts from a list of places."""

from __future__ import annotations

import pytest

from service.contents.places import name_place, parts_taken, places_changed, places_kept
from service.records.record import PlaceRecord

WHOLE = PlaceRecord("1987.412.9", layer=2)
SUIT = PlaceRecord("1931.14.2", ("a", "b"), note="folded")
HAT = PlaceRecord("1931.14.2", ("c",), compartment="B3")
PLACES = (WHOLE, SUIT, HAT)

TAKEN = {
    "whole object": (PlaceRecord("1987.412.9"), (), (SUIT, HAT)),
    "part of a whole": (PlaceRecord("1987.412.9", ("a",)), None, None),
    "all parts there are": (PlaceRecord("1931.14.2"), ("a", "b", "c"), (WHOLE,)),
    "one part of two": (
        PlaceRecord("1931.14.2", ("b",)),
        ("b",),
        (WHOLE, PlaceRecord("1931.14.2", ("a",), note="folded"), HAT),
    ),
    "the only part": (PlaceRecord("1931.14.2", ("c",)), ("c",), (WHOLE, SUIT)),
    "a part that is elsewhere": (PlaceRecord("1931.14.2", ("d",)), None, None),
    "an object that is elsewhere": (PlaceRecord("X.112"), None, None),
}


@pytest.mark.parametrize(("wanted", "parts", "kept"), TAKEN.values(), ids=TAKEN)
def test_parts_go_and_the_others_stay(
    wanted: PlaceRecord, parts: tuple[str, ...] | None, kept: tuple[PlaceRecord, ...] | None
) -> None:
    """What is named goes, everything else keeps its place; what is not there cannot go."""
    assert parts_taken(PLACES, wanted) == parts
    if kept is not None:
        assert places_kept(PLACES, wanted) == kept


def test_the_whole_object_goes_where_it_lies_whole_and_in_parts() -> None:
    """No list of parts says all that goes, so that none is given."""
    both = (PlaceRecord("1931.14.2", ("c",)), PlaceRecord("1931.14.2", layer=2))
    assert parts_taken(both, PlaceRecord("1931.14.2")) == ()


def test_an_object_gets_another_place() -> None:
    """The place of just these parts is replaced, in whatever order the parts are named."""
    moved = PlaceRecord("1931.14.2", ("b", "a"), layer=3)
    assert places_changed(PLACES, moved) == (WHOLE, moved, HAT)
    assert places_changed(PLACES, PlaceRecord("1931.14.2", ("a",))) is None


def test_a_place_is_named_with_its_parts() -> None:
    """Parts are named where some are meant, and left out where the whole object is."""
    assert [name_place(place) for place in (WHOLE, SUIT)] == ["1987.412.9", "1931.14.2 a b"]
