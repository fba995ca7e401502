"""What has been packed since an import: a packing from before it is no reason to keep anything.

An object may lie in a box before any record tells of it; the record that an import then made may
go again. What counts is what came in the change that recorded it, or later.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass

from sqlalchemy import Column, Connection, func, select

from service.store.base.bulk import in_portions
from service.store.tables import containers, history, packings, places, printed_cards
from service.store.taking_back.states import load_made_revisions

Revision = tuple[str, int]
"""A packing, by container and revision."""

_RECORDED = ("recorded",)
_RECORD_VERBS = ("recorded", "changed")


@dataclass(frozen=True, slots=True)
class _Stay:
    """An object in one packing; `is_current` where it lies there now."""

    object_number: str
    packing: Revision
    is_current: bool


def why_packed(
    connection: Connection, object_numbers: Sequence[str], *, repacked: Collection[str]
) -> dict[str, str]:
    """Say of objects what was done with them since they were recorded.

    `repacked` are containers whose contents go back to what they were.
    """
    stays = _load_since(connection, object_numbers)
    boxes = sorted({one.packing[0] for one in stays})
    made, printed = load_made_revisions(connection, boxes), _load_printed(connection, boxes)
    why: dict[str, str] = {}
    for one in stays:
        if one.packing in printed:
            why[one.object_number] = "a card that names it was printed"
        elif one.packing not in made:
            why[one.object_number] = "somebody has packed it"
        elif one.is_current and one.packing[0] not in repacked:
            why[one.object_number] = f"it lies in {one.packing[0]}"
    return why


def load_inner_since(
    connection: Connection, container_numbers: Sequence[str]
) -> tuple[tuple[str, str], ...]:
    """Load which containers came to lie in these since they were recorded: inner and outer."""
    number, inside = containers.c.container_number, containers.c.inside
    pairs: list[tuple[str, str]] = []
    for some in in_portions(container_numbers):
        query = select(number, inside).where(inside.in_(some))
        pairs += [(inner, outer) for inner, outer in connection.execute(query)]
    told = history.c.container_number
    recorded = _load_last(connection, told, [outer for _, outer in pairs], _RECORDED)
    changed = _load_last(connection, told, [inner for inner, _ in pairs], _RECORD_VERBS)
    return tuple(
        (inner, outer) for inner, outer in pairs if changed.get(inner, 0) >= recorded.get(outer, 0)
    )


def _load_since(connection: Connection, numbers: Sequence[str]) -> list[_Stay]:
    stays = list(_load_stays(connection, numbers))
    recorded = _load_last(connection, history.c.object_number, numbers, _RECORDED)
    packed = _load_packed(connection, {one.packing[0] for one in stays})
    return [
        one for one in stays if packed.get(one.packing, 0) >= recorded.get(one.object_number, 0)
    ]


def _load_stays(connection: Connection, numbers: Sequence[str]) -> Iterator[_Stay]:
    columns = (places.c.object_number, containers.c.container_number, packings.c.revision)
    for some in in_portions(numbers):
        query = (
            select(*columns, containers.c.revision.label("current"))
            .join_from(places, packings)
            .join(containers, packings.c.container_id == containers.c.id)
            .where(places.c.object_number.in_(some))
        )
        for number, container, revision, current in connection.execute(query):
            yield _Stay(number, (container, revision), revision == current)


def _load_packed(connection: Connection, boxes: Iterable[str]) -> dict[Revision, int]:
    """Load in which change each packing was made; what is told of it later names it too."""
    columns = (history.c.container_number, history.c.revision)
    found: dict[Revision, int] = {}
    for some in in_portions(sorted(boxes)):
        query = select(*columns, func.min(history.c.change)).group_by(*columns)
        query = query.where(history.c.container_number.in_(some), history.c.revision.is_not(None))
        found.update({(box, revision): n for box, revision, n in connection.execute(query)})
    return found


def _load_printed(connection: Connection, boxes: Sequence[str]) -> set[Revision]:
    """Load the packings of which a card was printed."""
    number, owner = containers.c.container_number, printed_cards.c.container_id
    found: set[Revision] = set()
    for some in in_portions(boxes):
        query = select(number, printed_cards.c.revision).join(containers, owner == containers.c.id)
        rows = connection.execute(query.where(number.in_(some)))
        found.update((box, revision) for box, revision in rows)
    return found


def _load_last(
    connection: Connection, column: Column[str], numbers: Sequence[str], verbs: Sequence[str]
) -> dict[str, int]:
    """Load in which change something was last told of each of these."""
    found: dict[str, int] = {}
    for some in in_portions(sorted(set(numbers))):
        query = select(column, func.max(history.c.change)).group_by(column)
        rows = connection.execute(query.where(column.in_(some), history.c.verb.in_(verbs)))
        found.update((number, change) for number, change in rows)
    return found
