"""Tests for setting both states of a conflict beside each other."""

from __future__ import annotations

import pytest

from service.errors import PackingConflictError
from service.keeping.containers.conflict import explain_conflict
from service.keeping.repack import Seen, put_in, take_out
from service.records.record import PlaceRecord
from service.store.handles import Connection
from tests.keeping.made import BOX, JAR, LEAD
from tests.store.made import LATER, STAMP


def test_both_changes_are_told_against_what_both_saw(connection: Connection) -> None:
    """Mine takes one thing out, theirs put another in; who did it and when stands beside it."""
    put_in(connection, Seen(BOX, 1), PlaceRecord("X.1"), stamp=LATER)
    with pytest.raises(PackingConflictError) as caught:
        take_out(connection, Seen(BOX, 1), JAR, stamp=STAMP)
    conflict = explain_conflict(connection, caught.value)
    yours, theirs = conflict.your_changes.places, conflict.their_changes.places
    assert [(one.course, one.place.object_number) for one in yours] == [("out", JAR)]
    assert [(one.course, one.place.object_number) for one in theirs] == [("in", "X.1")]
    assert [place.object_number for place in conflict.yours.places] == [LEAD]
    assert [(step.stamp, step.entry.revision) for step in conflict.steps] == [(LATER, 2)]
