"""Tests for the history of a container."""

from __future__ import annotations

from service.keeping.containers.history import tell_history
from service.keeping.repack import Seen, put_in, take_out
from service.records.record import PlaceRecord
from service.store.handles import Connection
from tests.keeping.made import BOX, JAR
from tests.store.made import LATER


def test_each_packing_says_what_it_changed(connection: Connection) -> None:
    """Newest first, with who, when and why."""
    put_in(connection, Seen(BOX, 1, "new find"), PlaceRecord("X.1"), stamp=LATER)
    take_out(connection, Seen(BOX, 2), JAR, stamp=LATER)
    page = tell_history(connection, BOX, limit=10)
    last, before, first = page.changes
    assert (last.stamp, last.deeds[0].revision) == (LATER, 3)
    assert before.deeds[0].detail == {"reason": "new find"}
    repackings = [one.deeds[0].repacking for one in (last, before)]
    told = [
        [(each.course.value, each.place.object_number) for each in one.places]
        for one in repackings
        if one is not None
    ]
    assert told == [[("out", JAR)], [("in", "X.1")]]
    assert [deed.verb for deed in first.deeds] == ["recorded", "packed"]


def test_a_long_history_goes_on(connection: Connection) -> None:
    """Each change stands on one page, and the last page leads no further."""
    put_in(connection, Seen(BOX, 1), PlaceRecord("X.1"), stamp=LATER)
    newest = tell_history(connection, BOX, limit=1)
    oldest = tell_history(connection, BOX, limit=1, before=newest.next_before)
    assert newest.changes[0].number > oldest.changes[0].number
    assert (newest.next_before, oldest.next_before) == (newest.changes[0].number, 0)
