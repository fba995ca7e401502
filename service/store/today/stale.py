"""What is marked to be worded anew, cards of containers and tags of objects alike."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Column, Connection, Table, delete, func, select

from service.store.base.bulk import in_portions
from service.store.tables import change_counter, containers, objects
from service.store.today.tables import today_cards, today_stale, today_stale_tags, today_tags


@dataclass(frozen=True, slots=True)
class Note:
    """One kind of note: the numbers of its records, what is noted of them, and their marks.

    Both tables have the key of the record as the first column of theirs.
    """

    numbers: Column[str]
    noted: Table
    marks: Table


@dataclass(frozen=True, slots=True)
class Stale:
    """Records to be worded anew, and the last change that was made by then."""

    numbers: tuple[str, ...]
    as_of: int


CARDS = Note(containers.c.container_number, today_cards, today_stale)
TAGS = Note(objects.c.object_number, today_tags, today_stale_tags)


def load_stale(connection: Connection, note: Note, *, limit: int) -> Stale:
    """Name some of the records that are marked, the earliest changed first."""
    owner = note.numbers.table
    query = (
        select(note.numbers)
        .join(note.marks, _key(note.marks) == owner.c.id)
        .order_by(note.marks.c.since, owner.c.id)
        .limit(limit)
    )
    numbers = tuple(connection.execute(query).scalars())
    return Stale(numbers, count_changes(connection))


def count_stale(connection: Connection, note: Note) -> int:
    """Count the records that are marked."""
    return int(connection.execute(select(func.count()).select_from(note.marks)).scalar_one())


def take_up(
    connection: Connection, note: Note, numbers: Sequence[str], *, as_of: int
) -> dict[str, int]:
    """Take away marks and notes of what was worded as of a change, and give the keys by number.

    A record that changed after that, or that somebody else has noted meanwhile, is left alone.
    """
    owner, taken = note.numbers.table, dict[str, int]()
    for some in in_portions(numbers):
        query = (
            select(note.numbers, owner.c.id)
            .join(note.marks, _key(note.marks) == owner.c.id)
            .where(note.numbers.in_(some), note.marks.c.since <= as_of)
        )
        keys: dict[str, int] = dict(connection.execute(query).all())
        for table in (note.noted, note.marks):
            connection.execute(delete(table).where(_key(table).in_(keys.values())))
        taken |= keys
    return taken


def count_changes(connection: Connection) -> int:
    """Give the number of the last change."""
    return int(connection.execute(select(change_counter.c.changes)).scalar_one())


def _key(table: Table) -> Column[int]:
    return next(iter(table.primary_key.columns))
