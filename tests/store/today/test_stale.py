"""Tests for what is marked to be worded anew; the notes have tests of their own."""

from __future__ import annotations

import pytest
from sqlalchemy import Connection, insert, select

from service.store.tables import containers, objects
from service.store.today.stale import CARDS, TAGS, Note, count_stale, load_stale, take_up
from tests.store.made import BOXES, HAT, LAMP, LEAD


@pytest.mark.parametrize(
    ("note", "numbers"), [(CARDS, BOXES), (TAGS, (LEAD, HAT, LAMP))], ids=["cards", "tags"]
)
def test_marks_are_taken_up_once(
    connection: Connection, note: Note, numbers: tuple[str, ...]
) -> None:
    """Only what has not changed since is taken; whoever comes second finds nothing."""
    owner = containers if note is CARDS else objects
    key = next(iter(note.marks.primary_key.columns)).name
    connection.execute(note.marks.delete())
    found = connection.execute(select(note.numbers, owner.c.id)).all()
    keys: dict[str, int] = dict(found)
    for since, number in enumerate(reversed(numbers), start=1):
        connection.execute(insert(note.marks).values({key: keys[number], "since": since}))
    assert count_stale(connection, note) == 3
    assert load_stale(connection, note, limit=2).numbers == numbers[:0:-1]
    taken = take_up(connection, note, numbers, as_of=2)
    assert taken == {number: keys[number] for number in numbers[1:]}
    assert take_up(connection, note, numbers, as_of=2) == {}
    assert load_stale(connection, note, limit=9).numbers == numbers[:1]
