"""What is to be checked: each container as one walks, and each kind of check with its day."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from service.contents.arrange import arrange_packings
from service.contents.packing import Packing
from service.handling.checks.due import (
    DoneCheck,
    DueCheck,
    is_surely_overdue,
    may_be_due,
    plan_checks,
)
from service.handling.checks.kinds import CheckKind
from service.records.museum.check_months import CheckMonths
from service.store.handles import Connection
from service.store.kept.checks import load_done
from service.store.lists.walk import Stand, load_filled, load_walk
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
    rounds, wish = _load_rounds(connection), DueWish(day, day, kinds, place)
    return tuple(_find_due(connection, rounds, _walk(connection, rounds, wish), wish))


@dataclass(frozen=True, slots=True)
class _Rounds:
    """How often the museum looks, and what each container was looked at for."""

    months: CheckMonths
    done: Mapping[str, Sequence[DoneCheck]]

    def may_be_due(self, stand: Stand, day: date, kinds: Collection[CheckKind]) -> bool:
        done = self.done.get(stand.container_number, ())
        return stand.is_packed and may_be_due(done, day, self.months, kinds)


def _load_rounds(connection: Connection) -> _Rounds:
    return _Rounds(load_museum(connection).checks, load_done(connection))


def _walk(connection: Connection, rounds: _Rounds, wish: DueWish) -> list[Stand]:
    return [
        stand
        for stand in load_walk(connection)
        if is_at(stand, wish.place) and rounds.may_be_due(stand, wish.day, wish.kinds)
    ]


def _find_due(
    connection: Connection, rounds: _Rounds, walk: list[Stand], wish: DueWish
) -> Iterator[DueContainer]:
    for some in _portions(walk):
        packings = _arrange(connection, some)
        for stand in some:
            number = stand.container_number
            checks = plan_checks(packings[number], rounds.done.get(number, ()), rounds.months)
            due = tuple(
                check for check in checks if check.kind in wish.kinds and check.is_due(wish.day)
            )
            if due:
                yield DueContainer(stand, due)


@dataclass(frozen=True, slots=True)
class DueInShort:
    """How many containers are to be checked, how many of them are overdue, and the first ones."""

    count: int
    overdue_count: int
    first: tuple[DueContainer, ...]


@dataclass(frozen=True, slots=True)
class DueWish:
    """What is asked for: by which day, as seen on which day, which kinds, and where."""

    day: date
    today: date
    kinds: Collection[CheckKind] = ALL_KINDS
    place: str = ""


def list_due_in_short(connection: Connection, wish: DueWish, *, most: int) -> DueInShort:
    """Count what is to be checked, and give the first `most` of it, overdue first.

    Contents are loaded only where they decide: what was never looked at is overdue in any case.
    """
    rounds = _load_rounds(connection)
    walk = _walk(connection, rounds, wish)
    filled = load_filled(connection)
    never = {
        stand.container_number
        for stand in walk
        if stand.container_number in filled
        and is_surely_overdue(
            rounds.done.get(stand.container_number, ()), rounds.months, wish.kinds
        )
    }
    looked = [stand for stand in walk if stand.container_number not in never]
    found = {one.stand.container_number: one for one in _find_due(connection, rounds, looked, wish)}
    late = never | {number for number, one in found.items() if one.is_overdue(wish.today)}
    overdue = [stand for stand in walk if stand.container_number in late]
    others = [one.stand for number, one in found.items() if number not in late]
    shown = (*overdue, *others)[:most]
    unseen = [stand for stand in shown if stand.container_number in never]
    found |= {
        one.stand.container_number: one for one in _find_due(connection, rounds, unseen, wish)
    }
    first = tuple(found[stand.container_number] for stand in shown)
    return DueInShort(len(overdue) + len(others), len(overdue), first)


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
