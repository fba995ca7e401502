"""The way of a round: what comes next after a container, and where one can go."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from service.keeping.rounds.due import DueContainer
from service.store.lists.walk import Stand


def next_on_way(found: Sequence[DueContainer], container_number: str) -> DueContainer | None:
    """Give what comes after a container in the list; of one that is not in it, the first.

    None at the end of the list: what was passed over is still on it, but behind.
    """
    numbers = [one.stand.container_number for one in found]
    if container_number not in numbers:
        return next(iter(found), None)
    return next(iter(found[numbers.index(container_number) + 1 :]), None)


def list_places(walk: Iterable[Stand]) -> tuple[str, ...]:
    """List the locations of containers and what these are part of, as one walks.

    A part stands behind the whole; `Store 2 / Bay 4` is part of `Store 2`.
    """
    places: dict[str, None] = {}
    for stand in walk:
        steps = stand.location.split(" / ") if stand.location else []
        places |= {" / ".join(steps[:depth]): None for depth in range(1, len(steps) + 1)}
    return tuple(places)
