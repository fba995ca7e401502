from __future__ import annotations

from sqlalchemy import Connection

from service.records.record import Collection, ContainerRecord
from service.store.packing.nesting import with_outer
from service.store.save_records import save_records
from tests.store.made import LATER


def test_boxes_around_are_found(connection: Connection) -> None:
    """A folder in a box in a crate; one that is not recorded is named, and nothing goes round."""
    records = (
        ContainerRecord("F-1", inside="B-001"),
        ContainerRecord("B-001", inside="C-9"),
        ContainerRecord("B-002", inside="B-003"),
        ContainerRecord("B-003", inside="B-002"),
    )
    save_records(connection, Collection(containers=records), stamp=LATER)
    assert with_outer(connection, ["F-1"]) == {"F-1", "B-001", "C-9"}
    assert with_outer(connection, ["B-002"]) == {"B-002", "B-003"}
    assert with_outer(connection, ["X-9"]) == {"X-9"}
    assert with_outer(connection, []) == set()
