"""One record among many, and where things lie, told with the containers around them."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from service.errors import NotFoundError
from service.records.record import ContainerRecord
from service.store.handles import Connection
from service.store.load_records import load_container
from service.store.packing.load import find_object, load_packing
from service.web.store.records.changing import Record
from service.web.store.records.shapes import PlaceView


def find_record(
    load: Callable[[Connection, str], Record], connection: Connection, number: str
) -> tuple[Record, ...]:
    """Give the record that has exactly this number, or none."""
    try:
        return (load(connection, number),)
    except NotFoundError:
        return ()


def find_places(connection: Connection, object_number: str) -> list[PlaceView]:
    """Say in which containers an object or parts of it lie now, and where those are."""
    return [
        view
        for number in find_object(connection, object_number)
        for view in _places_in(connection, number, object_number)
    ]


def _places_in(
    connection: Connection, container_number: str, object_number: str
) -> Iterator[PlaceView]:
    around = list(_outwards(connection, container_number))
    # Where a container is lies with the nearest one around it that says so.
    location = next((record.location for record in around if record.location), ())
    for place in load_packing(connection, container_number).places:
        if place.object_number == object_number:
            yield PlaceView(
                container_number=container_number,
                title=around[0].title,
                location=list(location),
                inside=[record.container_number for record in around[1:]],
                place=place,
            )


def _outwards(connection: Connection, container_number: str) -> Iterator[ContainerRecord]:
    """Give a container and those around it; records may name one that is not there, or a ring."""
    seen: set[str] = set()
    while container_number and container_number not in seen:
        seen.add(container_number)
        try:
            record = load_container(connection, container_number)
        except NotFoundError:
            return
        yield record
        container_number = record.inside
