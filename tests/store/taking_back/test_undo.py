from __future__ import annotations

import pytest
from sqlalchemy import Connection

from service.errors import NotFoundError
from service.records.record import Collection, ContainerRecord, Museum, ObjectRecord
from service.store.history import load_history
from service.store.kept.imports import list_imports, load_import
from service.store.lists.search import search
from service.store.packing.load import load_packing
from service.store.save_records import save_records
from service.store.taking_back.undo import TAKEN_BACK, TAKEN_OUT, summarise_undo, undo_import
from service.store.today.stale import CARDS, load_stale
from tests.store.made import BOXES, HAT, LAMP, LATER, LEAD, STAMP, changes
from tests.store.taking_back.made import CRATE, JUG, SHELF, facts, take_in


def test_all_goes_back_to_what_it_was(connection: Connection) -> None:
    """Museum, records, source rows and contents; what the import made anew is gone."""
    before = facts(connection)
    number = take_in(connection)
    assert facts(connection) != before
    undone = undo_import(connection, number, stamp=LATER)
    assert facts(connection, without=CRATE) == before
    (told,) = undone.plan.findings
    assert told.message == (
        f"Container {CRATE} was made by the import and stays:"
        " what was packed in it is part of its history."
    )
    assert summarise_undo(undone.plan) == {
        "objects changed": 1,
        "containers changed": 1,
        "packings changed": 3,
        "objects removed": 1,
        "containers removed": 1,
        "museum": 1,
        "left": 1,
    }
    assert search(connection, "jug").objects == ()
    assert search(connection, SHELF).containers == ()


def test_history_is_kept_and_a_new_revision_answers(connection: Connection) -> None:
    """Nothing is rewritten: what was done stays told, and so does that it was taken back."""
    number = take_in(connection)
    before = load_history(connection)
    undo_import(connection, number, stamp=LATER)
    told = load_history(connection)
    assert told[: len(before)] == before
    verbs = [(one.entry.verb, one.entry.object_number) for one in told[len(before) :]]
    assert {(TAKEN_BACK, ""), (TAKEN_OUT, JUG), ("changed", LEAD)} <= set(verbs)
    first, third = (load_packing(connection, "B-001", revision=at) for at in (1, 3))
    assert (third.places, load_packing(connection, "B-001")) == (first.places, third)
    assert load_packing(connection, "B-003").places == ()


def test_once_more_there_is_nothing_to_do(connection: Connection) -> None:
    """No change, no import, no row."""
    number = take_in(connection)
    undo_import(connection, number, stamp=LATER)
    before, listed = changes(connection), list_imports(connection)
    again = undo_import(connection, number, stamp=LATER)
    assert (again.import_id, again.plan.done) == (None, 8)
    assert (changes(connection), list_imports(connection)) == (before, listed)


def test_an_undo_can_be_undone_and_done_again(connection: Connection) -> None:
    """Back and forth any number of times; each is an import that names what it took back."""
    before = facts(connection)
    number = take_in(connection)
    after = facts(connection)
    back = undo_import(connection, number, stamp=LATER).import_id
    assert back is not None
    forth = undo_import(connection, back, stamp=LATER).import_id
    assert forth is not None
    assert facts(connection) == after
    assert undo_import(connection, number, stamp=LATER).import_id is not None
    assert facts(connection, without=CRATE) == before
    assert load_import(connection, back).undoes == number
    assert load_import(connection, back).undone_by == (forth,)
    assert load_import(connection, number).undone_by[0] == back


def test_every_box_that_it_touches_is_worded_anew(connection: Connection) -> None:
    """The crate as well as what lies in it and what lay there."""
    number = take_in(connection)
    undo_import(connection, number, stamp=LATER)
    assert set(load_stale(connection, CARDS, limit=10).numbers) == {*BOXES, CRATE}


def test_what_somebody_changed_since_is_left(connection: Connection) -> None:
    """It is named with who and when; everything else goes back."""
    number = take_in(connection)
    mine = Collection(objects=(ObjectRecord(LEAD, "Mine"),))
    save_records(connection, mine, stamp=STAMP)
    undone = undo_import(connection, number, stamp=LATER)
    (told,) = [one for one in undone.plan.findings if one.code == "changed-since-import"]
    assert told.message == (
        f"Object {LEAD} was changed since by Ada Quill on 2026-11-25 at 09:30 UTC;"
        " it was left as it is."
    )
    assert told.where.object_number == LEAD
    records = facts(connection)["records"]
    assert '"Mine"' in records[LEAD][0]  # type: ignore[index]
    assert (HAT in records, JUG in records, undone.plan.left) == (True, False, 2)  # type: ignore[operator]


def test_a_store_without_a_museum_has_none_again(connection: Connection) -> None:
    """And one that had its own gets that."""
    number = take_in(connection, Collection(museum=Museum("First")))
    second = take_in(connection, Collection(museum=Museum("Second")))
    undo_import(connection, second, stamp=LATER)
    assert facts(connection)["museum"] == Museum("First")
    undo_import(connection, number, stamp=LATER)
    assert facts(connection)["museum"] == Museum()


def test_an_import_that_is_not_there_is_told(connection: Connection) -> None:
    """Nothing is taken back."""
    with pytest.raises(NotFoundError, match="no import '99'"):
        undo_import(connection, 99, stamp=LATER)
    assert take_in(connection, Collection(containers=(ContainerRecord(LAMP),)))
