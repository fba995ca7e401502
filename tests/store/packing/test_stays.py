from __future__ import annotations

from sqlalchemy import Connection

from service.records.record import PackingRecord, PlaceRecord
from service.store.packing.move import Move, move_object
from service.store.packing.save import save_packing
from service.store.packing.stays import load_object_history
from tests.store.made import HAT, LAMP, LATER, LEAD


def told(connection: Connection, number: str) -> list[tuple[str, str, int | None]]:
    """Give verb, container and revision of an object's history, oldest first."""
    return [
        (event.entry.verb, event.entry.container_number, event.entry.revision)
        for event in load_object_history(connection, number)
    ]


def test_each_coming_and_going_is_told(connection: Connection) -> None:
    """Repacking around an object is no event of its own; a move is one at either end."""
    lead = PlaceRecord(LEAD)
    with_lamp = PackingRecord("B-001", places=(lead, PlaceRecord(LAMP)))
    save_packing(connection, with_lamp, expected_revision=1, stamp=LATER)
    move_object(connection, Move(lead, "B-001", 2, "B-003", 0, "flood"), stamp=LATER)
    move_object(connection, Move(lead, "B-003", 1, "B-001", 3), stamp=LATER)
    assert told(connection, LEAD) == [
        ("recorded", "", None),
        ("put in", "B-001", 1),
        ("taken out", "B-001", 3),
        ("put in", "B-003", 1),
        ("put in", "B-001", 4),
        ("taken out", "B-003", 2),
    ]
    assert told(connection, LAMP)[1:] == [("put in", "B-001", 2)]
    assert told(connection, HAT)[1:] == [("put in", "B-002", 1)]
