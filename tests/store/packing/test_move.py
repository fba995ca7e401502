from __future__ import annotations

from dataclasses import replace

import pytest
from sqlalchemy import Connection, Engine

from service.errors import NotFoundError, PackingConflictError
from service.records.record import PackingRecord, PlaceRecord
from service.store.history import load_history
from service.store.open import reading, writing
from service.store.packing.move import Move, move_object
from service.store.packing.save import save_packing
from tests.store.made import HAT, LAMP, LATER, LEAD, STAMP, dump

MOVE = Move(PlaceRecord(LEAD, layer=3, note="at the end"), "B-001", 1, "B-002", 1, "too heavy")


def test_both_containers_get_a_revision(connection: Connection) -> None:
    """What is moved lies in the other box at its new place; both changes are one."""
    left, right = move_object(connection, MOVE, stamp=LATER)
    day = LATER.at.date()
    assert left == PackingRecord("B-001", 2, (), "Ben Marl", day, "too heavy")
    assert right == PackingRecord(
        "B-002", 2, (PlaceRecord(HAT, ("a", "b")), MOVE.place), "Ben Marl", day, "too heavy"
    )
    events = load_history(connection)[-2:]
    assert [(event.change, event.entry.verb, event.entry.revision) for event in events] == [
        (2, "moved", 2),
        (2, "moved", 2),
    ]


PARTS: dict[str, tuple[tuple[str, ...], tuple[tuple[str, ...], ...], tuple[str, ...]]] = {
    "one part": (("a",), (("b",),), ("a",)),
    "both parts": (("b", "a"), (), ("b", "a")),
    "all that lies there": ((), (), ("a", "b")),
}


@pytest.mark.parametrize(("asked", "kept", "taken"), PARTS.values(), ids=PARTS)
def test_parts_can_go_alone(
    connection: Connection,
    asked: tuple[str, ...],
    kept: tuple[tuple[str, ...], ...],
    taken: tuple[str, ...],
) -> None:
    """The parts named go and the others stay; without names everything there goes."""
    move = Move(PlaceRecord(HAT, asked), "B-002", 1, "B-003", 0)
    left, right = move_object(connection, move, stamp=STAMP)
    assert tuple(place.parts for place in left.places) == kept
    assert [place.parts for place in right.places] == [taken]


def test_other_things_stay(connection: Connection) -> None:
    """A move leaves other objects and other places of the same object where they are."""
    spots = (PlaceRecord(LAMP), PlaceRecord(HAT, ("a",)), PlaceRecord(HAT, ("b",), layer=2))
    save_packing(connection, PackingRecord("B-002", places=spots), expected_revision=1, stamp=STAMP)
    move = Move(PlaceRecord(HAT, ("a",)), "B-002", 2, "B-003", 0)
    left, _ = move_object(connection, move, stamp=STAMP)
    assert left.places == (spots[0], spots[2])


def test_a_whole_object_goes_whole(connection: Connection) -> None:
    """An object packed without naming parts goes as it is, and no part of it can go alone."""
    _, right = move_object(connection, replace(MOVE, place=PlaceRecord(LEAD)), stamp=STAMP)
    assert right.places[-1] == PlaceRecord(LEAD)
    with pytest.raises(NotFoundError, match=r"object in B-002 '1931.14.2 a'"):
        move_object(
            connection, Move(PlaceRecord(LEAD, ("a",)), "B-002", 2, "B-003", 0), stamp=STAMP
        )


WRONG = {
    "not there": (replace(MOVE, place=PlaceRecord(LAMP)), NotFoundError),
    "unknown box": (replace(MOVE, to_container="B-999"), NotFoundError),
    "stale start": (replace(MOVE, from_revision=0), PackingConflictError),
    "stale end": (replace(MOVE, to_revision=0), PackingConflictError),
    "one box": (replace(MOVE, to_container="B-001"), ValueError),
}


@pytest.mark.parametrize(("move", "error"), WRONG.values(), ids=WRONG)
def test_a_refused_move_changes_nothing(engine: Engine, move: Move, error: type[Exception]) -> None:
    """A move that cannot be leaves both boxes and the history alone."""
    with reading(engine) as connection:
        before = dump(connection)
    with pytest.raises(error), writing(engine) as connection:
        move_object(connection, move, stamp=STAMP)
    with reading(engine) as connection:
        assert dump(connection) == before
