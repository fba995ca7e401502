from __future__ import annotations

import pytest

from service.records.record import PackingRecord, PlaceRecord
from service.store.packing.differ import Course, PlaceChange, compare_repacked

FID, LEAD, HAT = "1931.14.9", "X.112", "1987.412.9"


def _pack(number: str, *places: PlaceRecord, reason: str = "") -> dict[str, PackingRecord]:
    return {number: PackingRecord(number, 3, places, reason=reason)}


def test_each_object_is_told_by_what_becomes_of_it() -> None:
    """In, out, moved, another note; what stays as it is is not told, nor is the revision."""
    before = _pack(
        "B-1", PlaceRecord(FID), PlaceRecord(LEAD, layer=2), PlaceRecord(HAT), PlaceRecord("S")
    )
    moved, noted = PlaceRecord(LEAD, layer=1, compartment="A1"), PlaceRecord(HAT, note="in bag")
    after = {"B-1": PackingRecord("B-1", 9, (moved, noted, PlaceRecord("N"), PlaceRecord("S")))}
    repacking = compare_repacked(before, after)["B-1"]
    assert repacking.places == (
        PlaceChange(Course.MOVED, PlaceRecord(LEAD, layer=2), moved),
        PlaceChange(Course.NOTED, PlaceRecord(HAT), noted),
        PlaceChange(Course.IN, None, PlaceRecord("N")),
        PlaceChange(Course.OUT, PlaceRecord(FID), None),
    )
    assert repacking.packed == {"before": {}, "after": {}}


def test_whoever_packed_when_and_why_is_told_apart() -> None:
    """The same places with another reason are a packing that changes, but nothing in it moves."""
    place = PlaceRecord(FID)
    repacking = compare_repacked(_pack("B-1", place), _pack("B-1", place, reason="Survey"))["B-1"]
    assert repacking.places == ()
    assert repacking.packed == {"before": {}, "after": {"reason": "Survey"}}


def test_both_ends_of_a_move_name_each_other() -> None:
    """What goes from one container to another says so on both; a container may be new."""
    before = _pack("B-1", PlaceRecord(FID), PlaceRecord(LEAD))
    after = _pack("B-1", PlaceRecord(LEAD)) | _pack("B-2", PlaceRecord(FID, layer=4))
    found = compare_repacked(before, after)
    assert found["B-1"].places == (PlaceChange(Course.OUT, PlaceRecord(FID), None, "B-2"),)
    assert found["B-2"].places == (PlaceChange(Course.IN, None, PlaceRecord(FID, layer=4), "B-1"),)


def test_parts_are_told_apart() -> None:
    """A part that goes leaves the other where it is; an object named twice loses one place."""
    lid, body = PlaceRecord(FID, ("a",)), PlaceRecord(FID, ("b",))
    (gone,) = compare_repacked(_pack("B-1", lid, body), _pack("B-1", body))["B-1"].places
    assert gone == PlaceChange(Course.OUT, lid, None)
    one, two = PlaceRecord(LEAD, layer=1), PlaceRecord(LEAD, layer=2)
    (gone,) = compare_repacked(_pack("B-1", one, two), _pack("B-1", two))["B-1"].places
    assert gone == PlaceChange(Course.OUT, one, None)


def test_a_change_has_a_place() -> None:
    """Where it will lie counts before where it lay; a change of nothing is a mistake."""
    one, two = PlaceRecord(LEAD, layer=1), PlaceRecord(LEAD, layer=2)
    assert PlaceChange(Course.MOVED, one, two).place == two
    assert PlaceChange(Course.OUT, one, None).place == one
    with pytest.raises(ValueError, match="needs a place"):
        _ = PlaceChange(Course.OUT, None, None).place
