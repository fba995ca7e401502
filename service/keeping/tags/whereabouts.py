"""Where objects lie now, so that whoever changes a tag finds its object."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from service.records.naturally import natural_key
from service.records.record import ContainerRecord
from service.store.handles import Connection
from service.store.load_records import load_containers
from service.store.packing.load import load_holders


@dataclass(frozen=True, slots=True)
class Whereabouts:
    """The container in which an object lies and its location, outermost first; all may be empty."""

    container_number: str = ""
    location: tuple[str, ...] = ()


def locate_containers(connection: Connection, numbers: Sequence[str]) -> dict[str, Whereabouts]:
    """Say where containers are."""
    records = load_containers(connection, numbers)
    return {
        one.container_number: Whereabouts(one.container_number, one.location) for one in records
    }


def locate_objects(
    connection: Connection, object_numbers: Collection[str]
) -> dict[str, Whereabouts]:
    """Say where objects lie; one whose parts lie apart, at the first place that one walks past.

    An object that is packed nowhere is left out.
    """
    holders = load_holders(connection, object_numbers)
    records = load_containers(connection, list(holders))
    found: dict[str, Whereabouts] = {}
    for record in sorted(records, key=_walk):
        for place in holders[record.container_number]:
            here = Whereabouts(record.container_number, record.location)
            found.setdefault(place.object_number, here)
    return found


def _walk(record: ContainerRecord) -> tuple[object, ...]:
    location = [natural_key(part) for part in record.location]
    return (not location, location, natural_key(record.container_number))
