"""Tests for taking up again what was put down."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.errors import NotFoundError
from service.keeping.table.put_down import PutDown, TableItem, TablePhoto, put_down
from service.keeping.table.take_up import TakenUp, take_up
from service.records.record import Collection, PlaceRecord, Weight
from service.store.handles import Connection
from service.store.load_records import load_container, load_object
from service.store.packing.load import load_packing
from service.store.save_records import save_records
from service.store.shelf.files import StoredFile
from service.store.shelf.photos import find_photo_files
from tests.keeping.made import BOX, COVER, EMPTY, GOWN, JAR
from tests.store.made import LATER

NEW = "2026.3.1"
PHOTO = TablePhoto(StoredFile("ab" * 32, ".jpg", 9))


def undo(number: str, done: PutDown) -> TakenUp:
    """Say what is to be taken back."""
    return TakenUp(
        done.packing.container_number,
        number,
        done.before,
        done.packing.revision,
        done.photo_sha256,
        done.moved_from,
        done.moved_before,
    )


def test_place_and_photo_go_and_the_record_stays(connection: Connection) -> None:
    """What somebody else packed since is not touched."""
    done = put_down(connection, TableItem(EMPTY, PlaceRecord(NEW)), PHOTO, stamp=LATER)
    put_down(connection, TableItem(EMPTY, PlaceRecord("2026.3.2")), None, stamp=LATER)
    take_up(connection, undo(NEW, done), stamp=LATER)
    places = load_packing(connection, EMPTY).places
    assert [place.object_number for place in places] == ["2026.3.2"]
    assert find_photo_files(connection, [NEW]) == {}
    assert load_object(connection, NEW).object_number == NEW


def test_a_measured_weight_holds_again(connection: Connection) -> None:
    """Unless something else was packed since."""
    weighed = replace(load_container(connection, EMPTY), gross=Weight(6200.0))
    save_records(connection, Collection(containers=(weighed,)), stamp=LATER)
    done = put_down(connection, TableItem(EMPTY, PlaceRecord(NEW)), None, stamp=LATER)
    assert load_container(connection, EMPTY).gross is None
    take_up(connection, undo(NEW, done), stamp=LATER)
    assert load_container(connection, EMPTY).gross == Weight(6200.0)


def test_only_a_photo_goes_where_only_that_came(connection: Connection) -> None:
    """The packing is not touched."""
    done = put_down(connection, TableItem(BOX, PlaceRecord(JAR)), PHOTO, stamp=LATER)
    take_up(connection, undo(JAR, done), stamp=LATER)
    assert load_packing(connection, BOX).revision == 1
    assert find_photo_files(connection, [JAR]) == {}


def test_a_layer_comes_back(connection: Connection) -> None:
    """The object lies again where it lay."""
    done = put_down(connection, TableItem(BOX, PlaceRecord(JAR, layer=3)), None, stamp=LATER)
    take_up(connection, undo(JAR, done), stamp=LATER)
    assert load_packing(connection, BOX).places[0] == PlaceRecord(JAR)


def test_what_was_moved_goes_back(connection: Connection) -> None:
    """To the container and place it was taken out of."""
    item = TableItem(EMPTY, PlaceRecord(GOWN, layer=4), is_moved=True)
    done = put_down(connection, item, None, stamp=LATER)
    take_up(connection, undo(GOWN, done), stamp=LATER)
    assert load_packing(connection, EMPTY).places == ()
    assert load_packing(connection, COVER).places == (PlaceRecord(GOWN),)


def test_what_is_gone_meanwhile_is_told(connection: Connection) -> None:
    """Taken back twice, or from where it never lay, nothing is done."""
    done = put_down(connection, TableItem(EMPTY, PlaceRecord(NEW)), None, stamp=LATER)
    wanted = undo(NEW, done)
    take_up(connection, wanted, stamp=LATER)
    with pytest.raises(NotFoundError):
        take_up(connection, wanted, stamp=LATER)
    with pytest.raises(NotFoundError):
        take_up(connection, replace(wanted, moved_from=BOX, moved_before=1), stamp=LATER)
