"""Tests for marking the objects whose tag may say something else."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from sqlalchemy import Connection, delete

from service.records.record import Collection, ContainerRecord, Museum, ObjectRecord, PlaceRecord
from service.store.packing.move import Move, move_object
from service.store.printed.card import NewRun
from service.store.printed.runs import load_attached_tags, save_run
from service.store.printed.states import mark_attached, mark_spoiled
from service.store.save_records import save_records
from service.store.today.stale import TAGS, load_stale
from service.store.today.tables import today_stale_tags
from tests.store.made import HAT, LAMP, LATER, LEAD
from tests.store.printed.made import TAG

TAGGED = (HAT, LEAD)


def marked(connection: Connection) -> set[str]:
    """Name the objects that are marked, and take the marks away."""
    found = load_stale(connection, TAGS, limit=9).numbers
    connection.execute(delete(today_stale_tags))
    return set(found)


@pytest.fixture(autouse=True)
def tagged(connection: Connection) -> None:
    """Attach tags to the hat and the lead; that of the lamp is only made."""
    tags = tuple(replace(TAG, object_number=number) for number in (*TAGGED, LAMP))
    for card in save_run(connection, NewRun(tags), stamp=LATER)[:2]:
        mark_attached(connection, card.card_id, stamp=LATER)


def _saved(connection: Connection, collection: Collection) -> None:
    save_records(connection, collection, stamp=LATER)


def _renamed(number: str) -> Callable[[Connection], object]:
    record = ObjectRecord(number, "Another title")
    return lambda connection: _saved(connection, Collection(objects=(record,)))


def _the_museum(connection: Connection) -> None:
    _saved(connection, Collection(museum=Museum("Port Merrow Museum")))


def _a_container(connection: Connection) -> None:
    _saved(connection, Collection(containers=(ContainerRecord("B-001", title="Lead"),)))


def _moved(connection: Connection) -> None:
    move_object(connection, Move(PlaceRecord(LEAD), "B-001", 1, "B-003", 0), stamp=LATER)


def _another_tag_made(connection: Connection) -> None:
    save_run(connection, NewRun((replace(TAG, object_number=LEAD),)), stamp=LATER)


def _another_tag_attached(connection: Connection) -> None:
    (card,) = save_run(connection, NewRun((TAG,)), stamp=LATER)
    mark_attached(connection, card.card_id, stamp=LATER)


CHANGES: dict[str, tuple[Callable[[Connection], object], set[str]]] = {
    "its record": (_renamed(LEAD), {LEAD}),
    "one without an attached tag": (_renamed(LAMP), set()),
    "the museum": (_the_museum, set(TAGGED)),
    "its box": (_a_container, set()),
    "a move": (_moved, set()),
    "a print run": (_another_tag_made, set()),
    "a tag that is attached": (_another_tag_attached, {LAMP}),
}


@pytest.mark.parametrize(("change", "expected"), CHANGES.values(), ids=CHANGES)
def test_a_change_marks_what_it_touches(
    connection: Connection, change: Callable[[Connection], object], expected: set[str]
) -> None:
    """Those objects are marked whose attached tag may say something else, and no others."""
    assert marked(connection) == set(TAGGED)
    change(connection)
    assert marked(connection) == expected


def test_a_spoiled_tag_is_heard_of_no_more(connection: Connection) -> None:
    """What hangs on no object cannot be wrong."""
    marked(connection)
    (lead,) = load_attached_tags(connection, [LEAD])
    mark_spoiled(connection, lead.card_id, stamp=LATER)
    _renamed(LEAD)(connection)
    assert marked(connection) == set()
