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
    """

    container_number: str
    location: tuple[str, ...]
    kind: str
    changes: tuple[Change, ...]
    side: int = 1

    @property
    def urgency(self) -> Urgency:
        """The urgency of the most urgent reason; where none is given, the least."""
        return min((change.urgency for change in self.changes), default=Urgency.WORDING)


def order_reprints(entries: Iterable[Reprint]) -> tuple[Reprint, ...]:
    """Order cards to print again: the most urgent first, then as one walks through the store.

    The cards of a container stay together, at the place of its most urgent one. Containers whose
    location is not known come last among equally urgent ones.
    """
    kept = tuple(entries)
    urgencies: dict[str, Urgency] = {}
    for entry in kept:
        number = entry.container_number
        urgencies[number] = min(entry.urgency, urgencies.get(number, entry.urgency))
    return tuple(sorted(kept, key=lambda entry: (urgencies[entry.container_number], *_walk(entry))))


def _walk(entry: Reprint) -> tuple[object, ...]:
    return (
        not entry.location,
        [natural_key(part) for part in entry.location],
        natural_key(entry.container_number),
        entry.urgency,
        entry.kind,
        entry.side,
    )
