"""What is to be checked: each container as one walks, and each kind of check with its day."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from service.contents.arrange import arrange_packings
from service.contents.packing import Packing
from service.handling.checks.due import DueCheck, may_be_due, plan_checks
from service.handling.checks.kinds import CheckKind
from service.store.handles import Connection
from service.store.kept.checks import load_done
from service.store.lists.walk import Stand, load_walk
from service.store.load_records import load_collection, load_museum

ALL_KINDS = frozenset(CheckKind)
_PORTION = 500


@dataclass(frozen=True, slots=True)
class DueContainer:
    """A container that is to be checked, where it stands, and which checks are due."""

    stand: Stand
    checks: tuple[DueCheck, ...]

    def is_overdue(self, today: date) -> bool:
        """Tell whether the day of a check has passed, or one was never done."""
        return any(check.is_overdue(today) for check in self.checks)


def list_due(
    connection: Connection,
    day: date,
    *,
    kinds: Collection[CheckKind] = ALL_KINDS,
    place: str = "",
) -> tuple[DueContainer, ...]:
    """List the packed containers that are to be checked by a day, in walking order.

    `place` is a location and all that is part of it, such as `Store 2 / Bay 4`; "" is everywhere.
    """
    months = load_museum(connection).checks
    done = load_done(connection)
    walk = [
        stand
        for stand in load_walk(connection)
        if stand.is_packed
        and is_at(stand, place)
        and may_be_due(done.get(stand.container_number, ()), day, months, kinds)
    ]
    found = []
    for some in _portions(walk):
        packings = _arrange(connection, some)
        for stand in some:
            number = stand.container_number
            checks = plan_checks(packings[number], done.get(number, ()), months)
            due = tuple(check for check in checks if check.kind in kinds and check.is_due(day))
            found += [DueContainer(stand, due)] if due else []
    return tuple(found)


def is_at(stand: Stand, place: str) -> bool:
    """Tell whether a container stands at a place or at a part of it."""
    return not place or f"{stand.location} / ".startswith(f"{place} / ")


def put_overdue_first(found: Iterable[DueContainer], today: date) -> tuple[DueContainer, ...]:
    """Give the same with what is overdue first, each half as one walks."""
    return tuple(sorted(found, key=lambda one: not one.is_overdue(today)))


def _portions(walk: list[Stand]) -> Iterator[list[Stand]]:
    return (walk[first : first + _PORTION] for first in range(0, len(walk), _PORTION))


def _arrange(connection: Connection, stands: Iterable[Stand]) -> Mapping[str, Packing]:
    collection = load_collection(connection, [stand.container_number for stand in stands])
    packings = arrange_packings(collection).packings
    return {packing.container.container_number: packing for packing in packings}
