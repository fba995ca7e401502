from __future__ import annotations

import json
from dataclasses import replace

import pytest
from sqlalchemy import Connection

from service.errors import NotFoundError
from service.records.photos.edit import PhotoCrop, PhotoEdit
from service.records.record import ObjectRecord, PhotoReference, PhotoRole
from service.store.history import load_history
from service.store.kept.intake_tables import photo_edits
from service.store.shelf.photos import bring_photos, find_photo_files, note_file, save_photos
from service.store.shelf.shown import (
    find_shown,
    forget_shown,
    load_shown,
    load_shown_of,
    name_photo_file,
    order_photos,
    show_photo,
)
from service.store.today.stale import CARDS, load_stale
from tests.store.made import LATER, LEAD, STAMP, changes, rows
from tests.store.shelf.test_photos import brought

A, B, C = ("a" * 64, "b" * 64, "c" * 64)
EDIT = PhotoEdit(1, PhotoCrop(0.1, 0.2, 0.9, 1.0))


@pytest.fixture
def filled(connection: Connection) -> Connection:
    """Give a store in which the lead has two photos."""
    some = [brought(LEAD, "a.jpg", "a"), brought(LEAD, "b.jpg", "b", PhotoRole.BACK)]
    bring_photos(connection, some, stamp=STAMP)
    return connection


def _files(connection: Connection) -> list[str]:
    return [one.file for one in load_shown_of(connection, LEAD)]


def test_what_is_said_of_a_photo_is_kept_and_told(filled: Connection) -> None:
    """Each thing is a sentence of the history; the same again is none."""
    was = find_shown(filled, LEAD, A)
    wanted = replace(was, edit=EDIT, role=PhotoRole.DETAIL, is_printed=False, is_removed=True)
    assert show_photo(filled, LEAD, wanted, stamp=LATER) == wanted
    before = changes(filled)
    assert show_photo(filled, LEAD, wanted, stamp=LATER) == wanted
    assert changes(filled) == before
    told = [one for one in load_history(filled, object_number=LEAD) if one.stamp == LATER]
    assert [one.entry.verb for one in told] == [
        "photo turned",
        "photo cropped",
        "photo is detail",
        "photo kept off cards",
        "photo removed",
    ]
    detail = json.loads(told[0].entry.detail)
    assert (detail["file"], detail["before"], detail["after"]) == ("a.jpg", 0, 1)
    assert show_photo(filled, LEAD, was, stamp=LATER) == was
    verbs = [one.entry.verb for one in load_history(filled, object_number=LEAD)][-5:]
    assert verbs[1:4] == ["photo shown whole again", "photo is front", "photo printed again"]


def test_cards_show_what_is_left(filled: Connection) -> None:
    """A turned photo has another name, so that its cards are wrong; one kept off has none."""
    shown = find_shown(filled, LEAD, A)
    show_photo(filled, LEAD, replace(shown, edit=EDIT), stamp=LATER)
    first, second = find_photo_files(filled, [LEAD])[LEAD]
    assert first.stored_name == f"{A}-t1-c1000.2000.9000.10000.jpg"
    assert second.stored_name == f"{B}.jpg"
    for hidden in (replace(shown, is_printed=False), replace(shown, is_removed=True)):
        show_photo(filled, LEAD, hidden, stamp=LATER)
        assert [one.sha256 for one in find_photo_files(filled, [LEAD])[LEAD]] == [B]
    assert _files(filled) == ["a.jpg", "b.jpg"]


def test_the_boxes_of_the_object_are_worded_anew(filled: Connection) -> None:
    """A change of how a photo is shown may make the card of its box wrong."""
    before = load_stale(filled, CARDS, limit=10).as_of
    show_photo(filled, LEAD, replace(find_shown(filled, LEAD, A), edit=EDIT), stamp=LATER)
    stale = load_stale(filled, CARDS, limit=10)
    assert "B-001" in stale.numbers
    assert stale.as_of == before + 1


def test_photos_are_put_in_order(filled: Connection) -> None:
    """Those not named come behind, and so does one that is brought later."""
    assert [one.file for one in order_photos(filled, LEAD, [B], stamp=LATER)] == ["b.jpg", "a.jpg"]
    bring_photos(filled, [brought(LEAD, "c.jpg", "c")], stamp=STAMP)
    assert _files(filled) == ["b.jpg", "a.jpg", "c.jpg"]
    before = changes(filled)
    order_photos(filled, LEAD, [B, A, C], stamp=LATER)
    assert changes(filled) == before
    order_photos(filled, LEAD, [C, A], stamp=LATER)
    assert _files(filled) == ["c.jpg", "a.jpg", "b.jpg"]
    with pytest.raises(NotFoundError):
        order_photos(filled, LEAD, ["d" * 64], stamp=LATER)


def test_another_import_of_the_same_photo_keeps_all(filled: Connection) -> None:
    """So does a record that names it anew; another picture of that name is shown as it came."""
    show_photo(filled, LEAD, replace(find_shown(filled, LEAD, A), edit=EDIT), stamp=LATER)
    bring_photos(filled, [brought(LEAD, "a.jpg", "a")], stamp=LATER)
    save_photos(filled, [ObjectRecord(LEAD, photos=(PhotoReference("a.jpg"),))])
    assert find_shown(filled, LEAD, A).edit == EDIT
    bring_photos(filled, [brought(LEAD, "a.jpg", "c")], stamp=LATER)
    assert find_shown(filled, LEAD, C).edit == PhotoEdit()


def test_only_photos_are_given_away(filled: Connection) -> None:
    """Other files on the shelf, and what is not there, are refused."""
    note_file(filled, brought(LEAD, "x", "e").stored, stamp=STAMP)
    assert name_photo_file(filled, A) == ".jpg"
    for sha256 in ("e" * 64, "f" * 64):
        with pytest.raises(NotFoundError):
            name_photo_file(filled, sha256)
        with pytest.raises(NotFoundError):
            find_shown(filled, LEAD, sha256)
    with pytest.raises(NotFoundError, match="no object 'nobody'"):
        load_shown_of(filled, "nobody")


def test_nothing_is_left_of_an_object_that_goes(filled: Connection) -> None:
    """What was said of its photos goes with it."""
    show_photo(filled, LEAD, replace(find_shown(filled, LEAD, A), edit=EDIT), stamp=LATER)
    (key,) = {row[0] for row in rows(filled, photo_edits)}
    forget_shown(filled, [int(str(key))])
    assert load_shown(filled, [LEAD])[LEAD][0].edit == PhotoEdit()
