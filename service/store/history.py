"""Who changed what and when: begun with every change, written in the same transaction."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, insert, select, update

from service.store.base.bulk import execute_rows
from service.store.canonical import check_text
from service.store.tables import actors, change_counter, history
from service.store.today.mark import Touch, mark_stale
from service.store.today.tag_mark import mark_stale_tags


@dataclass(frozen=True, slots=True)
class Stamp:
    """Who makes a change, and when: a moment with its time zone."""

    actor: str
    at: datetime


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing that a change did; `detail` is JSON, empty where the verb says it all."""

    verb: str
    container_number: str = ""
    object_number: str = ""
    revision: int | None = None
    detail: str = ""


@dataclass(frozen=True, slots=True)
class Event:
    """An entry of the history with the number of its change, which is what orders it."""

    change: int
    stamp: Stamp
    entry: Entry


@dataclass(frozen=True, slots=True)
class Change:
    """A change under way: its number, and the actor's key."""

    number: int
    actor_id: int
    stamp: Stamp


def begin_change(connection: Connection, stamp: Stamp) -> Change:
    """Begin a change: from here to the end of the transaction nobody else changes anything.

    The lock on one row makes changes stand in line on any database; what is checked now still
    holds when it is written.
    """
    taken = connection.execute(select(change_counter.c.changes).with_for_update()).scalar_one()
    return Change(taken + 1, find_actor(connection, stamp.actor), stamp)


def write_history(connection: Connection, change: Change, entries: Iterable[Entry]) -> None:
    """Write what a change did, and mark the containers whose cards may say something else now.

    A change that did nothing leaves no trace and takes no number.
    """
    told = list(entries)
    if not told:
        return
    execute_rows(connection, insert(history), [_row(change, entry) for entry in told])
    connection.execute(update(change_counter).values(changes=change.number))
    touches = [
        Touch(entry.verb, entry.container_number, entry.object_number, entry.detail)
        for entry in told
    ]
    mark_stale(connection, change.number, touches)
    mark_stale_tags(connection, change.number, touches)


def load_history(
    connection: Connection, *, container_number: str = "", object_number: str = ""
) -> tuple[Event, ...]:
    """Load the history, oldest first: of one container, one object, or everything."""
    query = select(history, actors.c.name).join(actors).order_by(history.c.id)
    if container_number:
        query = query.where(history.c.container_number == container_number)
    if object_number:
        query = query.where(history.c.object_number == object_number)
    return tuple(
        Event(
            row.change,
            Stamp(row.name, row.at),
            Entry(row.verb, row.container_number, row.object_number, row.revision, row.detail),
        )
        for row in connection.execute(query)
    )


def _row(change: Change, entry: Entry) -> dict[str, object]:
    return {
        "change": change.number,
        "at": change.stamp.at,
        "actor_id": change.actor_id,
        "verb": entry.verb,
        "container_number": entry.container_number,
        "object_number": entry.object_number,
        "revision": entry.revision,
        "detail": entry.detail,
    }


def find_actor(connection: Connection, name: str) -> int:
    """Find the key of whoever acts; a name that is new is noted."""
    query = select(actors.c.id).where(actors.c.name == name)
    found = connection.execute(query).scalar_one_or_none()
    if found is not None:
        return int(found)
    made = insert(actors).values(name=check_text(name)).returning(actors.c.id)
    return int(connection.execute(made).scalar_one())
