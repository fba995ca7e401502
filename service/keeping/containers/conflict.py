"""Two people packed one container at once: what each of them did to the state both had seen."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from service.errors import PackingConflictError
from service.records.record import PackingRecord
from service.store.canonical import decode_record
from service.store.handles import Connection
from service.store.history import Event, load_history
from service.store.packing.differ import Repacking, compare_repacked
from service.store.packing.load import load_packing

PACKING_VERBS = frozenset(("packed", "moved"))


@dataclass(frozen=True, slots=True)
class Conflict:
    """Both states, and what each changes in the one that was seen.

    Attributes:
        seen: The state that both began with.
        yours: What the container would hold by the change that was refused.
        theirs: What it holds now.
        your_changes: What `yours` changes.
        their_changes: What was changed meanwhile.
        steps: The packings made meanwhile, oldest first: who made them, when and why.
    """

    seen: PackingRecord
    yours: PackingRecord
    theirs: PackingRecord
    your_changes: Repacking
    their_changes: Repacking
    steps: tuple[Event, ...]


def explain_conflict(connection: Connection, error: PackingConflictError) -> Conflict:
    """Set both states beside each other.

    Raises:
        NotFoundError: When the container is not there, or never had the revision that was seen.
    """
    number = error.container_number
    seen = load_packing(connection, number, revision=error.expected)
    yours = decode_record(PackingRecord, error.yours)
    theirs = load_packing(connection, number)
    return Conflict(
        seen,
        yours,
        theirs,
        compare_repacked({number: seen}, {number: yours})[number],
        compare_repacked({number: seen}, {number: theirs})[number],
        tuple(_packed_after(load_history(connection, container_number=number), error.expected)),
    )


def _packed_after(events: Iterable[Event], revision: int) -> Iterable[Event]:
    for event in events:
        entry = event.entry
        if entry.verb in PACKING_VERBS and entry.revision and entry.revision > revision:
            yield event
