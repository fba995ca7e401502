"""An import into the store of three boxes, and what the store holds but for numbers of changes."""

from __future__ import annotations

from sqlalchemy import Connection

from service.records.record import (
    Collection,
    ContainerRecord,
    Museum,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
)
from service.store.canonical import encode_record, encode_source
from service.store.history import Stamp
from service.store.kept.imports import note_import
from service.store.load_records import load_collection
from service.store.packing.load import load_current
from service.store.save_records import save_records
from service.store.taking_back.states import packing_state, save_states
from tests.store.made import LAMP, LATER, LEAD

JUG, CRATE, SHELF = "L2019.4", "C-9", "C-10"

IMPORT = Collection(
    museum=Museum("Port Merrow Museum"),
    objects=(
        ObjectRecord(LEAD, "Sounding lead", source={"Titel": "Lot"}),
        ObjectRecord(JUG, "Jug"),
    ),
    containers=(
        ContainerRecord("B-002", title="Hats", inside=CRATE),
        ContainerRecord(CRATE),
        ContainerRecord("C-10"),
    ),
    packings=(
        PackingRecord("B-001", 1, (PlaceRecord(JUG),), "Ivy Hale"),
        PackingRecord("B-003", 1, (PlaceRecord(LAMP),)),
        PackingRecord(CRATE, 1, (PlaceRecord(LEAD),)),
    ),
)


def take_in(connection: Connection, collection: Collection = IMPORT, stamp: Stamp = LATER) -> int:
    """Take a collection in as an import does, and give its number."""
    saved = save_records(connection, collection, stamp=stamp)
    changed = {f"{kind} new": len(getattr(saved, kind).new) for kind in ("objects", "containers")}
    number = note_import(connection, "export.csv", "a" * 64, changed, stamp=stamp)
    save_states(connection, number, saved.states)
    return number


def facts(connection: Connection, *, without: str = "") -> dict[str, object]:
    """Give all records and what lies where, without revisions, and without one container."""
    whole = load_collection(connection)
    packings = {of: packing_state(one) for of, one in load_current(connection).items()}
    records = {
        getattr(one, number): (encode_record(one), encode_source(one.source))
        for number, some in (
            ("object_number", whole.objects),
            ("container_number", whole.containers),
        )
        for one in some
        if getattr(one, number) != without
    }
    return {
        "museum": whole.museum,
        "records": records,
        "packings": {of: state for of, state in packings.items() if state.text},
    }
