from __future__ import annotations

from dataclasses import replace

from sqlalchemy import Connection

from service.records.record import (
    Collection,
    Museum,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
)
from service.store.kept.imports import note_import
from service.store.packing.load import load_packing
from service.store.packing.save import save_packing
from service.store.save_records import save_records
from service.store.shelf.photos import bring_photos
from service.store.taking_back.plan import plan_undo
from service.store.taking_back.states import StateKind
from tests.store.made import LATER, LEAD, STAMP, dump
from tests.store.shelf.test_photos import brought
from tests.store.taking_back.made import CRATE, JUG, SHELF, take_in


def test_a_plan_names_everything_and_changes_nothing(connection: Connection) -> None:
    """What goes back, what goes, and what stays."""
    number = take_in(connection)
    before = dump(connection)
    plan = plan_undo(connection, number)
    assert plan.numbers(StateKind.OBJECT) == (LEAD,)
    assert plan.numbers(StateKind.OBJECT, removed=True) == (JUG,)
    assert plan.numbers(StateKind.CONTAINER, removed=True) == (SHELF,)
    assert plan.numbers(StateKind.PACKING) == ("B-001", "B-003", CRATE)
    assert (plan.done, plan.left) == (0, 1)
    assert dump(connection) == before


def test_a_box_that_was_packed_since_is_left(connection: Connection) -> None:
    """Who packed it and when is told; what lies there by now is not taken out of the records."""
    number = take_in(connection)
    packed = load_packing(connection, "B-001")
    more = replace(packed, places=(*packed.places, PlaceRecord("X.9")))
    save_packing(connection, more, expected_revision=packed.revision, stamp=STAMP)
    plan = plan_undo(connection, number)
    told = {one.message for one in plan.findings}
    assert (
        "What lies in B-001 was changed since by Ada Quill on 2026-11-25 at 09:30 UTC;"
        " it was left as it is."
    ) in told
    assert f"Object {JUG} was made by the import and stays: somebody has packed it." in told


def test_what_lies_elsewhere_by_now_does_not_come_back(connection: Connection) -> None:
    """A box is left where its former contents would have something in two places."""
    first = Collection(packings=(PackingRecord("B-001", 1, ()),))
    number = take_in(connection, first)
    there = PackingRecord("B-003", places=(PlaceRecord(LEAD),))
    save_packing(connection, there, expected_revision=0, stamp=STAMP)
    plan = plan_undo(connection, number)
    assert [one.code for one in plan.findings] == ["object-in-two-places"]
    assert (plan.back, plan.left) == ((), 1)


def test_what_was_brought_a_photo_is_kept(connection: Connection) -> None:
    """The import made it, and somebody has worked on it."""
    number = take_in(connection, Collection(objects=(ObjectRecord(JUG, "Jug"),)))
    bring_photos(connection, [brought(JUG, "x.jpg", "a")], stamp=STAMP)
    plan = plan_undo(connection, number)
    (told,) = plan.findings
    assert told.code == "kept-of-import"
    assert told.message.endswith("stays: a photo was brought for it.")
    assert plan.removed == ()


def test_the_museum_that_was_changed_since_is_named(connection: Connection) -> None:
    """Records and museum have each their own last hand."""
    number = take_in(connection, Collection(museum=Museum("First")))
    save_records(connection, Collection(museum=Museum("Second")), stamp=LATER)
    (told,) = plan_undo(connection, number).findings
    assert told.message.startswith("What the museum chose was changed since by Ben Marl")


def test_an_import_from_before_cannot_be_taken_back(connection: Connection) -> None:
    """It is told; one that changed nothing just has nothing to take back."""
    old = note_import(connection, "old.csv", "a" * 64, {"objects new": 3}, stamp=STAMP)
    (told,) = plan_undo(connection, old).findings
    assert told.code == "import-not-undoable"
    same = {"objects new": 0, "objects unchanged": 3, "museum": 0, "refused": 1}
    empty = note_import(connection, "same.csv", "a" * 64, same, stamp=STAMP)
    assert plan_undo(connection, empty).findings == ()
    assert plan_undo(connection, empty).collection == Collection()
