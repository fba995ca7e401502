from __future__ import annotations

from sqlalchemy import Connection

from service.records.record import (
    Collection,
    ContainerRecord,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
)
from service.store.packing.save import save_packing
from service.store.printed.card import MadeCard, NewRun
from service.store.printed.runs import save_run
from service.store.save_records import save_records
from service.store.taking_back.packed import load_inner_since, why_packed
from tests.store.made import LAMP, LATER, STAMP
from tests.store.taking_back.made import CRATE, JUG, take_in

UNKNOWN = "X.9"


def _pack(connection: Connection, container: str, *numbers: str, expected: int = 0) -> None:
    places = tuple(PlaceRecord(number) for number in numbers)
    wanted = PackingRecord(container, places=places)
    save_packing(connection, wanted, expected_revision=expected, stamp=STAMP)


def test_what_lay_there_before_it_was_recorded_keeps_nothing(connection: Connection) -> None:
    """An object may be packed that is in no record; its record may come and go."""
    _pack(connection, "B-003", UNKNOWN)
    take_in(connection, Collection(objects=(ObjectRecord(UNKNOWN, "Net float"),)))
    assert why_packed(connection, [UNKNOWN], repacked=()) == {}
    _pack(connection, "B-003", UNKNOWN, LAMP, expected=1)
    assert why_packed(connection, [UNKNOWN], repacked=()) == {UNKNOWN: "somebody has packed it"}


def test_what_an_import_packed_keeps_it_while_it_lies_there(connection: Connection) -> None:
    """Not where the contents of that box go back; a card of it that was printed always does."""
    take_in(connection)
    assert why_packed(connection, [JUG], repacked=()) == {JUG: "it lies in B-001"}
    assert why_packed(connection, [JUG], repacked={"B-001"}) == {}
    card = MadeCard("B-001", "lid-card", 2, "f" * 64, "{}")
    save_run(connection, NewRun((card,)), stamp=STAMP)
    why = why_packed(connection, [JUG], repacked={"B-001"})
    assert why == {JUG: "a card that names it was printed"}


def test_boxes_that_came_to_lie_in_a_box_count(connection: Connection) -> None:
    """One whose record named it before there was such a box does not."""
    before = Collection(containers=(ContainerRecord("B-003", inside=CRATE),))
    save_records(connection, before, stamp=STAMP)
    take_in(connection, Collection(containers=(ContainerRecord(CRATE),)))
    assert load_inner_since(connection, [CRATE]) == ()
    after = Collection(containers=(ContainerRecord("B-002", inside=CRATE),))
    save_records(connection, after, stamp=LATER)
    assert load_inner_since(connection, [CRATE]) == (("B-002", CRATE),)
