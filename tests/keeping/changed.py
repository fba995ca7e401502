"""Changes of records that tests of the reprint list make."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from service.records.record import Collection, ContainerRecord, ObjectRecord
from service.store.handles import Connection
from service.store.save_records import save_records
from tests.keeping.made import COLLECTION
from tests.store.made import LATER


def with_object(record: ObjectRecord) -> Callable[[Connection], object]:
    """Keep a record of an object."""
    return lambda connection: save_records(connection, Collection(objects=(record,)), stamp=LATER)


def with_container(record: ContainerRecord) -> Callable[[Connection], object]:
    """Keep a record of a container."""
    return lambda connection: save_records(
        connection, Collection(containers=(record,)), stamp=LATER
    )


def other_address(connection: Connection) -> None:
    """Send those who scan a card elsewhere."""
    museum = replace(
        COLLECTION.museum, container_address="https://portmerrow.example/{container_number}"
    )
    save_records(connection, Collection(museum=museum), stamp=LATER)
