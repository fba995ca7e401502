"""Where an object has been: the packings that brought it into a container or took it out."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import replace

from sqlalchemy import Connection, select

from service.store.history import Event, load_history
from service.store.tables import containers, packings, places

_PACKING_VERBS = ("packed", "moved")
_PUT_IN, _TAKEN_OUT = "put in", "taken out"


def load_object_history(connection: Connection, object_number: str) -> tuple[Event, ...]:
    """Load what was done to an object's record, and into what it came and went, oldest first."""
    events = list(load_history(connection, object_number=object_number))
    for number, revisions in _find_stays(connection, object_number).items():
        turns = _find_turns(revisions)
        events += [
            _tell(event, object_number, turns)
            for event in load_history(connection, container_number=number)
            if event.entry.verb in _PACKING_VERBS and event.entry.revision in turns
        ]
    return tuple(sorted(events, key=lambda event: event.change))


def _find_stays(connection: Connection, object_number: str) -> dict[str, set[int]]:
    """Find the revisions of each container that held the object, or parts of it."""
    query = (
        select(containers.c.container_number, packings.c.revision)
        .join_from(places, packings)
        .join(containers, packings.c.container_id == containers.c.id)
        .where(places.c.object_number == object_number)
        .order_by(containers.c.id)
    )
    found: defaultdict[str, set[int]] = defaultdict(set)
    for number, revision in connection.execute(query):
        found[number].add(revision)
    return found


def _find_turns(revisions: set[int]) -> dict[int | None, str]:
    """Say at which revisions the object came, and at which it was no longer there."""
    came: dict[int | None, str] = {n: _PUT_IN for n in revisions if n - 1 not in revisions}
    left = {n + 1: _TAKEN_OUT for n in revisions if n + 1 not in revisions}
    return came | left


def _tell(event: Event, object_number: str, turns: Mapping[int | None, str]) -> Event:
    verb = turns[event.entry.revision]
    return replace(event, entry=replace(event.entry, verb=verb, object_number=object_number))
