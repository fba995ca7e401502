"""Reads packings, and where things lie now."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, select

from service.errors import NotFoundError
from service.records.record import PackingRecord, PlaceRecord
from service.store.base.bulk import in_portions
from service.store.canonical import decode_record
from service.store.packing.occupancy import Places
from service.store.tables import containers, packings, places

IS_CURRENT = (packings.c.container_id == containers.c.id) & (
    packings.c.revision == containers.c.revision
)
"""Joins a container with its current packing."""


@dataclass(frozen=True, slots=True)
class Held:
    """A container's key and the revision of its current packing, 0 before the first."""

    container_id: int
    revision: int


def load_packing(
    connection: Connection, container_number: str, *, revision: int | None = None
) -> PackingRecord:
    """Load a packing, the current one where no revision is named; revision 0 has no places.

    Raises:
        NotFoundError: When there is no such container or revision.
    """
    held = find_held(connection, container_number)
    wanted = held.revision if revision is None else revision
    if wanted == 0:
        return PackingRecord(container_number, 0)
    query = select(packings.c.record).where(
        packings.c.container_id == held.container_id, packings.c.revision == wanted
    )
    text = connection.execute(query).scalar()
    if text is None:
        name = f"{container_number} r{wanted}"
        raise NotFoundError(name, what="packing")
    return decode_record(PackingRecord, text)


def load_current(
    connection: Connection, container_numbers: Sequence[str] | None = None
) -> dict[str, PackingRecord]:
    """Load the current packings by container, of all containers where none are named."""
    query = (
        select(containers.c.container_number, packings.c.record)
        .join_from(containers, packings, IS_CURRENT)
        .order_by(containers.c.id)
    )
    if container_numbers is None:
        return _decode(connection.execute(query))
    found: dict[str, PackingRecord] = {}
    for some in in_portions(container_numbers):
        portion = query.where(containers.c.container_number.in_(some))
        found.update(_decode(connection.execute(portion)))
    return found


def load_holders(connection: Connection, object_numbers: Iterable[str]) -> dict[str, Places]:
    """Load which containers hold these objects, and the parts that lie in each."""
    found: dict[str, list[PlaceRecord]] = {}
    for some in in_portions(sorted(set(object_numbers))):
        query = (
            select(containers.c.container_number, places.c.object_number, places.c.parts)
            .join_from(places, packings)
            .join(containers, IS_CURRENT)
            .where(places.c.object_number.in_(some))
            .order_by(containers.c.id, places.c.position)
        )
        for number, object_number, parts in connection.execute(query):
            place = PlaceRecord(object_number, tuple(json.loads(parts)))
            found.setdefault(number, []).append(place)
    return {number: tuple(held) for number, held in found.items()}


def find_object(connection: Connection, object_number: str) -> tuple[str, ...]:
    """Name the containers in which an object or parts of it lie now."""
    return tuple(load_holders(connection, [object_number]))


def find_held(connection: Connection, container_number: str) -> Held:
    """Find a container's key and current revision.

    Raises:
        NotFoundError: When there is no such container.
    """
    found = load_held(connection, [container_number])
    if container_number not in found:
        raise NotFoundError(container_number, what="container")
    return found[container_number]


def load_held(connection: Connection, container_numbers: Sequence[str]) -> dict[str, Held]:
    """Find keys and current revisions of those containers that are there."""
    found: dict[str, Held] = {}
    for some in in_portions(container_numbers):
        query = select(containers.c.container_number, containers.c.id, containers.c.revision).where(
            containers.c.container_number.in_(some)
        )
        for number, key, revision in connection.execute(query):
            found[number] = Held(key, revision)
    return found


def _decode(rows: Iterable[tuple[str, str]]) -> dict[str, PackingRecord]:
    return {number: decode_record(PackingRecord, text) for number, text in rows}
