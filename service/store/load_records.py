"""Loads records as they were saved."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TypeVar

from sqlalchemy import Connection, Table, select

from service.errors import NotFoundError
from service.records.record import Collection, ContainerRecord, Museum, ObjectRecord
from service.store.base.bulk import in_portions
from service.store.canonical import decode_record
from service.store.packing.load import load_current, load_holders
from service.store.tables import containers, museum, objects

Record = TypeVar("Record", ObjectRecord, ContainerRecord)


def load_object(connection: Connection, object_number: str) -> ObjectRecord:
    """Load one object.

    Raises:
        NotFoundError: When there is none of that number.
    """
    for record in load_objects(connection, [object_number]):
        return record
    raise NotFoundError(object_number, what="object")


def load_container(connection: Connection, container_number: str) -> ContainerRecord:
    """Load one container.

    Raises:
        NotFoundError: When there is none of that number.
    """
    for record in load_containers(connection, [container_number]):
        return record
    raise NotFoundError(container_number, what="container")


def load_museum(connection: Connection) -> Museum:
    """Load the museum's own choices; one that says nothing where none were saved."""
    text = connection.execute(select(museum.c.record)).scalar()
    return decode_record(Museum, text or "{}")


def load_collection(
    connection: Connection, container_numbers: Sequence[str] | None = None
) -> Collection:
    """Load everything, or all that the cards of some containers need; packings as they are now.

    Records come in the order in which they were first saved, without findings. With numbers
    come those that lie in them, and those that hold other parts of the same objects, for the cards
    say where the rest is: whoever prints names again which to print. Unknown numbers give nothing.
    """
    if container_numbers is None:
        return Collection(
            museum=load_museum(connection),
            objects=tuple(load_objects(connection, None)),
            containers=tuple(load_containers(connection, None)),
            packings=tuple(load_current(connection).values()),
        )
    wanted = _with_inner(connection, container_numbers)
    packings = load_current(connection, wanted)
    numbers = [place.object_number for packing in packings.values() for place in packing.places]
    beside = [n for n in load_holders(connection, numbers) if n not in packings]
    packings |= load_current(connection, beside)
    all_numbers = {place.object_number for p in packings.values() for place in p.places}
    return Collection(
        museum=load_museum(connection),
        objects=tuple(load_objects(connection, sorted(all_numbers))),
        containers=tuple(load_containers(connection, [*wanted, *beside])),
        packings=tuple(packings.values()),
    )


def _with_inner(connection: Connection, numbers: Iterable[str]) -> list[str]:
    """Add the containers that lie in these, and those that lie in them, and so on."""
    found = dict.fromkeys(numbers)
    outer = list(found)
    while outer:
        inner: list[str] = []
        for some in in_portions(outer):
            query = select(containers.c.container_number).where(containers.c.inside.in_(some))
            inner += connection.execute(query.order_by(containers.c.id)).scalars()
        outer = [number for number in inner if number not in found]
        found.update(dict.fromkeys(outer))
    return list(found)


def load_objects(
    connection: Connection, numbers: Sequence[str] | None = None
) -> list[ObjectRecord]:
    """Load those objects that are there, in the order in which they were first saved."""
    return _load(connection, objects, ObjectRecord, "object_number", numbers)


def load_containers(
    connection: Connection, numbers: Sequence[str] | None = None
) -> list[ContainerRecord]:
    """Load those containers that are there, in the order in which they were first saved."""
    return _load(connection, containers, ContainerRecord, "container_number", numbers)


def _load(
    connection: Connection,
    table: Table,
    kind: type[Record],
    number: str,
    numbers: Sequence[str] | None,
) -> list[Record]:
    query = select(table.c.id, table.c.record, table.c.source)
    portions = [[]] if numbers is None else in_portions(numbers)
    rows: list[tuple[int, str, str]] = []
    for some in portions:
        portion = query if numbers is None else query.where(table.c[number].in_(some))
        rows += [(key, record, source) for key, record, source in connection.execute(portion)]
    return [decode_record(kind, record, source=source) for _, record, source in sorted(rows)]
