"""Stores and records that the tests of the store begin with."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

from sqlalchemy import Connection, Engine, Table, select

from service.records.record import Collection, ContainerRecord, ObjectRecord, PackingRecord
from service.records.record import PlaceRecord as Place
from service.store.base.columns import metadata
from service.store.history import Stamp
from service.store.migrations.upgrade import upgrade_store
from service.store.open import open_folder, writing
from service.store.save_records import save_records
from service.store.tables import change_counter

MOMENT = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)
STAMP = Stamp("Ada Quill", MOMENT)
LATER = Stamp("Ben Marl", MOMENT.replace(hour=11))

LEAD, HAT, LAMP = "1931.14.2", "PMM.77.3", "X.112"
BOXES = ("B-001", "B-002", "B-003")


def make_store(folder: Path) -> Engine:
    """Make an empty store of today's form."""
    engine = open_folder(folder)
    upgrade_store(engine)
    return engine


def collection() -> Collection:
    """Give three objects and three boxes; the first holds the lead, the second parts of a hat."""
    return Collection(
        objects=tuple(ObjectRecord(number, f"Title of {number}") for number in (LEAD, HAT, LAMP)),
        containers=tuple(ContainerRecord(number) for number in BOXES),
        packings=(
            PackingRecord("B-001", 1, (Place(LEAD, layer=2),)),
            PackingRecord("B-002", 1, (Place(HAT, ("a", "b")),)),
        ),
    )


def fill(engine: Engine) -> None:
    """Save the three boxes."""
    with writing(engine) as connection:
        save_records(connection, collection(), stamp=STAMP)


def dump(connection: Connection) -> dict[str, list[tuple[object, ...]]]:
    """Give every row of every table."""
    return {table.name: rows(connection, table) for table in metadata.sorted_tables}


def rows(connection: Connection, table: Table) -> list[tuple[object, ...]]:
    """Give the rows of a table in the order of its key."""
    query = select(table).order_by(*table.primary_key.columns)
    return [tuple(row) for row in connection.execute(query)]


def changes(connection: Connection) -> int:
    """Give the number of the last change."""
    return int(connection.execute(select(change_counter.c.changes)).scalar_one())
