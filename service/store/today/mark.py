"""Marks the containers whose cards may say something else after a change.

Too many are harmless: they are worded again and found the same. One too few would be a card on a
shelf that nobody replaces, so everything is marked that the history does not say is of no concern.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, delete, insert, literal, select

from service.store.base.bulk import in_portions
from service.store.packing.load import load_holders
from service.store.packing.nesting import with_outer
from service.store.tables import containers, packings, places
from service.store.today.tables import today_stale

MUSEUM_VERB = "museum changed"
CARD_VERB = "card "
"""Begins what is told of printed cards, which changes no record."""


@dataclass(frozen=True, slots=True)
class Touch:
    """What one entry of the history touches; `detail` as the entry keeps it."""

    verb: str
    container_number: str
    object_number: str
    detail: str


def mark_stale(connection: Connection, change: int, touches: Iterable[Touch]) -> None:
    """Mark the containers that a change touches, directly or through what lies in them."""
    touching = [touch for touch in touches if not touch.verb.startswith(CARD_VERB)]
    if any(touch.verb == MUSEUM_VERB for touch in touching):
        mark_all_stale(connection, change)
        return
    named = {touch.container_number for touch in touching if touch.container_number}
    objects = {touch.object_number for touch in touching if touch.object_number}
    objects |= _objects_lately_in(connection, sorted(named))
    touched = named | _former_outer(touching) | load_holders(connection, objects).keys()
    _mark(connection, change, sorted(with_outer(connection, touched)))


def mark_all_stale(connection: Connection, change: int) -> None:
    """Mark every container: the museum's own choices, or the wording itself, have changed."""
    connection.execute(delete(today_stale))
    every = select(containers.c.id, literal(change))
    connection.execute(insert(today_stale).from_select(["container_id", "since"], every))


def _objects_lately_in(connection: Connection, numbers: Sequence[str]) -> set[str]:
    """Name what lies in these containers and what lay there before the last packing.

    Cards elsewhere may say where the other parts of these objects are.
    """
    found: set[str] = set()
    for some in in_portions(numbers):
        query = (
            select(places.c.object_number)
            .join(packings, places.c.packing_id == packings.c.id)
            .join(containers, packings.c.container_id == containers.c.id)
            .where(containers.c.container_number.in_(some))
            .where(packings.c.revision >= containers.c.revision - 1)
        )
        found.update(connection.execute(query).scalars())
    return found


def _former_outer(touches: Iterable[Touch]) -> set[str]:
    """Name the containers in which a container lay before its record was changed."""
    found = set()
    for touch in touches:
        if touch.container_number and touch.detail:
            record = json.loads(touch.detail).get("record", {})
            found.add(record.get("before", {}).get("inside", ""))
    return found - {""}


def _mark(connection: Connection, change: int, numbers: Sequence[str]) -> None:
    for some in in_portions(numbers):
        wanted = select(containers.c.id).where(containers.c.container_number.in_(some))
        connection.execute(delete(today_stale).where(today_stale.c.container_id.in_(wanted)))
        marks = wanted.add_columns(literal(change))
        connection.execute(insert(today_stale).from_select(["container_id", "since"], marks))
