"""The reprint list: which cards to print again, in the order in which to do it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from service.cards.changes.change import Change, Urgency
from service.records.naturally import natural_key


@dataclass(frozen=True, slots=True)
class Reprint:
    """An attached card that is out of date, where its container is, and why.

    `location` is the path to the container, outermost first; it is empty where none is known.
    A tag names its object, and the container in which that lies now, which may be none.
    """

    container_number: str
    location: tuple[str, ...]
    kind: str
    changes: tuple[Change, ...]
    side: int = 1
    object_number: str = ""

    @property
    def urgency(self) -> Urgency:
        """The urgency of the most urgent reason; where none is given, the least."""
        return min((change.urgency for change in self.changes), default=Urgency.WORDING)


def order_reprints(entries: Iterable[Reprint]) -> tuple[Reprint, ...]:
    """Order cards to print again: the most urgent first, then as one walks through the store.

    The cards of a container stay together, and the tags of what lies in it, at the place of its
    most urgent one. Containers whose location is not known come last among equally urgent ones, and
    after them the tags of objects that are packed nowhere.
    """
    kept = tuple(entries)
    urgencies: dict[_Stop, Urgency] = {}
    for entry in kept:
        stop = _stop(entry)
        urgencies[stop] = min(entry.urgency, urgencies.get(stop, entry.urgency))
    return tuple(sorted(kept, key=lambda entry: (urgencies[_stop(entry)], *_walk(entry))))


_Stop = tuple[str, str]
"""Where one stops on the way: at a container, or at an object that lies in none."""


def _stop(entry: Reprint) -> _Stop:
    return (entry.container_number, "" if entry.container_number else entry.object_number)


def _walk(entry: Reprint) -> tuple[object, ...]:
    return (
        not entry.container_number,
        not entry.location,
        [natural_key(part) for part in entry.location],
        natural_key(entry.container_number),
        natural_key(_stop(entry)[1]),
        entry.urgency,
        entry.kind,
        entry.side,
        natural_key(entry.object_number),
    )
