"""Tests for marking the containers whose cards may say something else."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from sqlalchemy import Connection, delete, select

from service.records.record import (
    Collection,
    ContainerRecord,
    Museum,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
)
from service.store.packing.move import Move, move_object
from service.store.packing.save import save_packing
from service.store.printed.card import NewRun
from service.store.printed.runs import save_run
from service.store.save_records import save_records
from service.store.tables import containers
from service.store.today.tables import today_stale
from tests.store.made import BOXES, HAT, LAMP, LATER, LEAD
from tests.store.printed.made import LID

NESTED = ContainerRecord("B-003", inside="B-001")


def marked(connection: Connection) -> list[str]:
    """Name the containers that are marked, and take the marks away."""
    query = select(containers.c.container_number).join(today_stale).order_by(containers.c.id)
    found = list(connection.execute(query).scalars())
    connection.execute(delete(today_stale))
    return found


def saved(connection: Connection, collection: Collection) -> None:
    """Save records over those that are there."""
    save_records(connection, collection, stamp=LATER)


def _one_object(connection: Connection) -> None:
    saved(connection, Collection(objects=(ObjectRecord(HAT, "Another title"),)))


def _one_container(connection: Connection) -> None:
    saved(connection, Collection(containers=(ContainerRecord("B-003", title="Lamps"),)))


def _the_museum(connection: Connection) -> None:
    saved(connection, Collection(museum=Museum("Port Merrow Museum")))


def _put_inside(connection: Connection) -> None:
    saved(connection, Collection(containers=(NESTED,)))


def _nothing_new(connection: Connection) -> None:
    saved(connection, Collection(objects=(ObjectRecord(HAT, f"Title of {HAT}"),)))


def _unpacked_object(connection: Connection) -> None:
    saved(connection, Collection(objects=(ObjectRecord(LAMP, "Another title"),)))


def _moved(connection: Connection) -> None:
    move_object(connection, Move(PlaceRecord(LEAD), "B-001", 1, "B-003", 0), stamp=LATER)


def _a_print_run(connection: Connection) -> None:
    save_run(connection, NewRun((LID,)), stamp=LATER)


CHANGES: dict[str, tuple[Callable[[Connection], None], list[str]]] = {
    "an object": (_one_object, ["B-002"]),
    "a container": (_one_container, ["B-003"]),
    "the museum": (_the_museum, list(BOXES)),
    "a box put into another": (_put_inside, ["B-001", "B-003"]),
    "the same again": (_nothing_new, []),
    "an object that lies nowhere": (_unpacked_object, []),
    "a move": (_moved, ["B-001", "B-003"]),
    "a print run": (_a_print_run, []),
}


@pytest.mark.parametrize(("change", "expected"), CHANGES.values(), ids=CHANGES)
def test_a_change_marks_what_it_touches(
    connection: Connection, change: Callable[[Connection], None], expected: list[str]
) -> None:
    """Those containers are marked whose cards may say something else, and no others."""
    assert marked(connection) == list(BOXES)
    change(connection)
    assert marked(connection) == expected


def test_other_parts_of_an_object_are_heard_of(connection: Connection) -> None:
    """A card says where the rest of its object lies, so moving the rest marks it too."""
    move_object(connection, Move(PlaceRecord(HAT, ("b",)), "B-002", 1, "B-001", 1), stamp=LATER)
    marked(connection)
    move_object(connection, Move(PlaceRecord(HAT, ("b",)), "B-001", 2, "B-003", 0), stamp=LATER)
    assert marked(connection) == ["B-001", "B-002", "B-003"]


def test_outer_boxes_are_marked_too(connection: Connection) -> None:
    """A card shows what lies in the containers inside, now and until they were taken out."""
    _put_inside(connection)
    marked(connection)
    inner = PackingRecord("B-003", places=(PlaceRecord(LAMP),))
    save_packing(connection, inner, expected_revision=0, stamp=LATER)
    assert marked(connection) == ["B-001", "B-003"]
    saved(connection, Collection(containers=(replace(NESTED, inside="B-002"),)))
    assert marked(connection) == list(BOXES)
