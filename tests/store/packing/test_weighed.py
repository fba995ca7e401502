from __future__ import annotations

import json

from sqlalchemy import Connection

from service.records.record import (
    Collection,
    ContainerRecord,
    PackingRecord,
    PlaceRecord,
    Weight,
)
from service.store.history import load_history
from service.store.load_records import load_container
from service.store.packing.save import save_packing
from service.store.packing.weighed import restore_weight
from service.store.save_records import save_records
from tests.store.made import LAMP, LATER, LEAD, STAMP

HEAVY = Weight(7400.0)


def weigh(connection: Connection, *records: ContainerRecord) -> None:
    """Save containers as they are weighed."""
    save_records(connection, Collection(containers=records), stamp=STAMP)


def gross_of(connection: Connection, number: str) -> Weight | None:
    """Give the weight that a container is recorded with."""
    return load_container(connection, number).gross


def repack(connection: Connection, *places: PlaceRecord) -> None:
    """Give the first box other places."""
    save_packing(connection, PackingRecord("B-001", 0, places), expected_revision=1, stamp=LATER)


def test_other_contents_take_the_weight_out(connection: Connection) -> None:
    """The history has the weight that was; the weight of another box stays."""
    weigh(connection, ContainerRecord("B-001", gross=HEAVY), ContainerRecord("B-002", gross=HEAVY))
    repack(connection, PlaceRecord(LEAD, layer=2), PlaceRecord(LAMP))
    assert gross_of(connection, "B-001") is None
    assert gross_of(connection, "B-002") == HEAVY
    entry = load_history(connection, container_number="B-001")[-1].entry
    assert entry.verb == "weight taken out"
    assert json.loads(entry.detail)["record"]["before"] == {"gross": {"weight_g": 7400.0}}


def test_another_place_in_the_box_weighs_the_same(connection: Connection) -> None:
    """What was only laid elsewhere in it leaves the weight true."""
    weigh(connection, ContainerRecord("B-001", gross=HEAVY))
    repack(connection, PlaceRecord(LEAD, layer=1, compartment="A1"))
    assert gross_of(connection, "B-001") == HEAVY


def test_the_boxes_around_are_as_untrue(connection: Connection) -> None:
    """A box in a box in a box: whatever holds what was repacked has to be weighed again."""
    weigh(
        connection,
        ContainerRecord("B-001", inside="B-002"),
        ContainerRecord("B-002", inside="B-003", gross=HEAVY),
        ContainerRecord("B-003", inside="B-001", gross=HEAVY),
    )
    repack(connection)
    assert gross_of(connection, "B-002") is None
    assert gross_of(connection, "B-003") is None


def test_a_weight_taken_out_can_be_put_back(connection: Connection) -> None:
    """Once, and not over one that was measured since."""
    weigh(connection, ContainerRecord("B-001", gross=HEAVY))
    repack(connection, PlaceRecord(LAMP))
    assert restore_weight(connection, "B-001", revision=2, stamp=LATER)
    assert gross_of(connection, "B-001") == HEAVY
    assert load_history(connection, container_number="B-001")[-1].entry.verb == "weight put back"
    weigh(connection, ContainerRecord("B-001", gross=Weight(1.0)))
    assert not restore_weight(connection, "B-001", revision=2, stamp=LATER)
    assert gross_of(connection, "B-001") == Weight(1.0)


def test_where_none_was_taken_out_none_is_put_back(connection: Connection) -> None:
    """A container that was never weighed stays so."""
    repack(connection, PlaceRecord(LAMP))
    assert not restore_weight(connection, "B-001", revision=2, stamp=LATER)
