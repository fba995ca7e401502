from __future__ import annotations

from dataclasses import replace

from service.contents.compare import PackingDifference, compare_packings
from service.records.record import PlaceRecord
from tests.contents.made import objects, packing

KEPT, GONE, COME = objects(3)


def test_a_packing_does_not_differ_from_itself() -> None:
    """Nothing is reported where nothing changed, whatever the revision says."""
    before = packing([KEPT, GONE])
    after = replace(before, revision=4, packed_by="somebody else")
    assert compare_packings(before, after) == PackingDifference()


def test_what_came_and_what_went() -> None:
    """Objects are named by their number, each on its own list."""
    found = compare_packings(packing([KEPT, GONE]), packing([KEPT, COME]))
    assert found == PackingDifference(added=("1987.412.3",), removed=("1987.412.2",))


def test_what_moved_and_what_is_described_differently() -> None:
    """A new place is a move, new words are a change, and both can be true of one object."""
    before = packing([KEPT, GONE])
    renamed = replace(KEPT, title="Pin")
    places = [PlaceRecord("1987.412.1", layer=2), PlaceRecord("1987.412.2")]
    found = compare_packings(before, packing([renamed, GONE], places=places))
    assert found == PackingDifference(moved=("1987.412.1",), changed=("1987.412.1",))


def test_parts_are_compared_on_their_own() -> None:
    """A part that leaves is reported though another part of the object stays."""
    both = [PlaceRecord("1987.412.1", parts=("a",)), PlaceRecord("1987.412.1", parts=("b",))]
    found = compare_packings(packing([KEPT], places=both), packing([KEPT], places=both[:1]))
    assert found == PackingDifference(removed=("1987.412.1",))
