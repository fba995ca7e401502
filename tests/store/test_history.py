from __future__ import annotations

from sqlalchemy import Connection

from service.store.history import Entry, Event, begin_change, load_history, write_history
from tests.store.made import LATER, LEAD, STAMP, changes, dump


def test_history_is_ordered_by_changes(connection: Connection) -> None:
    """Entries of one change share its number; the next change has the next, whatever the clock."""
    first = begin_change(connection, LATER)
    write_history(connection, first, [Entry("looked"), Entry("moved", "B-001", LEAD, 3, "{}")])
    second = begin_change(connection, STAMP)
    write_history(connection, second, [Entry("looked", "B-001")])
    assert load_history(connection)[-3:] == (
        Event(2, LATER, Entry("looked")),
        Event(2, LATER, Entry("moved", "B-001", LEAD, 3, "{}")),
        Event(3, STAMP, Entry("looked", "B-001")),
    )
    assert changes(connection) == 3


def test_history_of_one_thing(connection: Connection) -> None:
    """One container or one object has its own story."""
    assert [event.entry.verb for event in load_history(connection, object_number=LEAD)] == [
        "recorded"
    ]
    assert [event.entry.verb for event in load_history(connection, container_number="B-001")] == [
        "recorded",
        "packed",
    ]


def test_a_change_that_did_nothing_leaves_no_trace(connection: Connection) -> None:
    """Beginning a change and doing nothing changes nothing."""
    before = dump(connection)
    write_history(connection, begin_change(connection, STAMP), [])
    assert dump(connection) == before
