from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.compose.objects import choose_photo, compose_object, name_object, write_aside
from service.contents.packing import PackedObject
from service.records.record import ObjectRecord, PhotoReference, PhotoRole, PlaceRecord
from tests.contents.made import hazard

SECRET = ObjectRecord(
    "1987.412.9", title="Pistol, flintlock", photos=(PhotoReference("pistol.jpg"),)
)
HERE = PlaceRecord("1987.412.9", ("a",), compartment="B3", note="wrapped")
ELSEWHERE = ((("b",), "B-7"), ((), "B-8"))


def packed(record: ObjectRecord, *, known: bool = True) -> PackedObject:
    """Put an object into its place."""
    return PackedObject(record, HERE, known, ELSEWHERE)


def test_an_object_as_the_outside_shows_it() -> None:
    """Number, title, photo, place, cell and what lies elsewhere all come from the record."""
    made = compose_object(packed(SECRET))
    assert (made.object_number, made.title, made.photo) == (
        "1987.412.9",
        "Pistol, flintlock",
        "pistol.jpg",
    )
    assert (made.place, made.cell, made.photo_words) == ("B3", (2, 1), "")
    assert made.aside == "here: a; b in B-7; rest in B-8; wrapped"


def test_inside_a_nested_container_the_place_names_it() -> None:
    """A compartment of a tray is no compartment of the box."""
    made = compose_object(packed(SECRET), inside="T-1")
    assert (made.place, made.cell) == ("T-1 B3", None)


@pytest.mark.parametrize(
    ("code", "words"),
    [
        ("firearm", "Do not open: ask first"),
        ("ammunition", "Do not open: ask first"),
        ("controlled-drug", "Do not open: ask first"),
        ("human-remains", "Restricted: ask first"),
        ("restricted", "Restricted: ask first"),
        ("", "Restricted: ask first"),
    ],
)
def test_what_is_discreet_shows_its_number_alone(code: str, words: str) -> None:
    """Neither title nor photo nor whereabouts of parts stand outside, whatever else is known."""
    hazards = (hazard(code),) if code else ()
    record = replace(SECRET, hazards=hazards, restricted=not code)
    made = compose_object(packed(record))
    assert (made.object_number, made.title, made.photo) == ("1987.412.9", words, "")
    assert (made.photo_words, made.aside) == ("not shown", "")


@pytest.mark.parametrize(
    ("record", "known", "words"),
    [
        (ObjectRecord("1", "Pin", "jewellery"), True, "Pin"),
        (ObjectRecord("1", "", "jewellery"), True, "jewellery"),
        (ObjectRecord("1"), True, "no title recorded"),
        (ObjectRecord("1"), False, "not in the records"),
    ],
)
def test_names(record: ObjectRecord, words: str, *, known: bool) -> None:
    """The title wins over the object name, and silence is said."""
    assert name_object(packed(record, known=known)) == words


FRONT, BACK, DETAIL = (PhotoReference(f"{role.value}.jpg", role) for role in PhotoRole)


@pytest.mark.parametrize(
    ("photos", "role", "file"),
    [
        ((BACK, FRONT, DETAIL), PhotoRole.FRONT, "front.jpg"),
        ((DETAIL, BACK), PhotoRole.FRONT, "detail.jpg"),
        ((DETAIL, BACK), PhotoRole.BACK, "back.jpg"),
        ((FRONT,), PhotoRole.BACK, ""),
        ((), PhotoRole.FRONT, ""),
    ],
)
def test_photos(photos: tuple[PhotoReference, ...], role: PhotoRole, file: str) -> None:
    """Any photo stands in for the front; nothing stands in for the back."""
    assert choose_photo(packed(ObjectRecord("1", photos=photos)), role) == file


def test_an_object_without_a_photo_says_so() -> None:
    """An empty frame has its reason in words."""
    assert compose_object(packed(ObjectRecord("1"))).photo_words == "no photo yet"


def test_a_whole_object_at_one_place_has_nothing_aside() -> None:
    """What needs no words gets none."""
    assert not write_aside(PackedObject(SECRET, PlaceRecord("1987.412.9")))
