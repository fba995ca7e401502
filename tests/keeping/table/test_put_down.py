"""Tests for putting things down on the packing table."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.errors import NotFoundError, PackedElsewhereError
from service.keeping.table.put_down import TableItem, TablePhoto, put_down
from service.records.record import Hazard, HazardState, PhotoRole, PlaceRecord
from service.store.handles import Connection
from service.store.history import load_history
from service.store.load_records import load_object
from service.store.packing.load import load_packing
from service.store.shelf.files import StoredFile
from service.store.shelf.photos import find_photo_files
from tests.keeping.made import BOX, COVER, EMPTY, GOWN, JAR, LEAD
from tests.store.made import LATER

NEW = "2026.3.1"
PHOTO = TablePhoto(StoredFile("ab" * 32, ".jpg", 9), PhotoRole.BACK)
ITEM = TableItem(EMPTY, PlaceRecord(NEW, layer=2), title="Net needle")


def test_a_new_thing_gets_record_photo_and_place(connection: Connection) -> None:
    """All three at once; the photo goes by a name of ours."""
    done = put_down(connection, ITEM, PHOTO, stamp=LATER)
    assert (done.is_new, done.before, done.packing.revision) == (True, 0, 1)
    assert done.packing.places == (PlaceRecord(NEW, layer=2),)
    assert done.packing.packed_by == LATER.actor
    assert load_object(connection, NEW).title == "Net needle"
    (photo,) = find_photo_files(connection, [NEW])[NEW]
    assert (photo.file, photo.role) == (f"back-{'ab' * 8}.jpg", PhotoRole.BACK)
    assert done.photo_sha256 == photo.sha256


def test_a_thing_without_title_stays_without(connection: Connection) -> None:
    """No title is made up; photo and title are both optional."""
    put_down(connection, replace(ITEM, title=""), None, stamp=LATER)
    assert load_object(connection, NEW).title == ""
    assert find_photo_files(connection, [NEW]) == {}


def test_another_photo_makes_no_revision(connection: Connection) -> None:
    """What lies there already gets the photo alone; a title that it has stays."""
    item = TableItem(BOX, PlaceRecord(JAR), title="Another name")
    done = put_down(connection, item, PHOTO, stamp=LATER)
    assert (done.is_new, done.before, done.packing.revision) == (False, 1, 1)
    assert load_object(connection, JAR).title == "Bait jar, stoneware"
    assert put_down(connection, item, PHOTO, stamp=LATER).photo_sha256 == ""


def test_another_layer_is_another_revision(connection: Connection) -> None:
    """Its compartment and note stay unless others are given."""
    first = PlaceRecord(JAR, layer=1, compartment="B3", note="in tissue")
    put_down(connection, TableItem(BOX, first), None, stamp=LATER)
    done = put_down(connection, TableItem(BOX, PlaceRecord(JAR, layer=3)), None, stamp=LATER)
    assert done.packing.revision == 3
    assert done.packing.places[0] == replace(first, layer=3)


def test_what_others_packed_meanwhile_stays(connection: Connection) -> None:
    """Two at one table: each thing is added to what lies there then."""
    put_down(connection, ITEM, None, stamp=LATER)
    second = replace(ITEM, place=PlaceRecord("2026.3.2"))
    done = put_down(connection, second, None, stamp=LATER)
    assert [place.object_number for place in done.packing.places] == [NEW, "2026.3.2"]


def test_what_lies_elsewhere_is_moved_only_on_request(connection: Connection) -> None:
    """It is refused first; moved, both containers get a revision."""
    item = TableItem(EMPTY, PlaceRecord(GOWN))
    with pytest.raises(PackedElsewhereError, match=COVER):
        put_down(connection, item, None, stamp=LATER)
    done = put_down(connection, replace(item, is_moved=True), None, stamp=LATER)
    assert (done.moved_from, done.moved_before) == (COVER, 1)
    assert load_packing(connection, COVER).places == ()


def test_what_lies_apart_is_not_gathered_by_one_word(connection: Connection) -> None:
    """The whole of an object whose parts lie in two containers is refused."""
    for box, part in ((BOX, "a"), (COVER, "b")):
        put_down(connection, TableItem(box, PlaceRecord(NEW, (part,))), None, stamp=LATER)
    item = TableItem(EMPTY, PlaceRecord(NEW), is_moved=True)
    with pytest.raises(PackedElsewhereError):
        put_down(connection, item, None, stamp=LATER)
    third = TableItem(EMPTY, PlaceRecord(NEW, ("c",)))
    assert put_down(connection, third, None, stamp=LATER).packing.places[0].parts == ("c",)


@pytest.mark.parametrize(
    ("found", "kept"),
    [
        (HazardState.CONFIRMED, HazardState.CONFIRMED),
        (HazardState.UNCHECKED, HazardState.PRESUMED),
    ],
)
def test_a_hazard_is_only_made_surer(
    connection: Connection, found: HazardState, kept: HazardState
) -> None:
    """What is recorded is never doubted at the table; another hazard is added."""
    for hazard in (Hazard("lead", found, note="white bloom"), Hazard("mould", found)):
        item = TableItem(BOX, PlaceRecord(LEAD, layer=2), hazard=hazard)
        put_down(connection, item, None, stamp=LATER)
    states = {one.code: one.state for one in load_object(connection, LEAD).hazards}
    assert states == {"lead": kept, "mould": found}


def test_an_unknown_container_is_refused(connection: Connection) -> None:
    """Nothing is made then."""
    with pytest.raises(NotFoundError, match="B-999"):
        put_down(connection, replace(ITEM, container_number="B-999"), None, stamp=LATER)
    assert load_history(connection, object_number=NEW) == ()
