"""Tests for taking photos back."""

from __future__ import annotations

from sqlalchemy import Connection

from service.records.record import ObjectRecord, PhotoReference
from service.store.history import load_history
from service.store.shelf.photos import bring_photos, find_photo_files, save_photos
from service.store.shelf.take_back import take_photo_back
from tests.store.made import HAT, LEAD, STAMP
from tests.store.shelf.test_photos import brought


def test_only_this_photo_of_this_object_goes(connection: Connection) -> None:
    """Others stay, of this object and of others; said twice it does nothing."""
    some = [brought(LEAD, "a.jpg", "a"), brought(LEAD, "b.jpg", "b"), brought(HAT, "a.jpg", "a")]
    bring_photos(connection, some, stamp=STAMP)
    assert take_photo_back(connection, LEAD, "a" * 64, stamp=STAMP)
    assert not take_photo_back(connection, LEAD, "a" * 64, stamp=STAMP)
    files = find_photo_files(connection, [LEAD, HAT])
    assert [one.file for one in files[LEAD]] == ["b.jpg"]
    assert [one.file for one in files[HAT]] == ["a.jpg"]
    verbs = [event.entry.verb for event in load_history(connection, object_number=LEAD)]
    assert verbs.count("photo taken back") == 1


def test_what_a_record_names_stays(connection: Connection) -> None:
    """Such a photo goes when the record no longer names it."""
    save_photos(connection, [ObjectRecord(LEAD, photos=(PhotoReference("a.jpg"),))])
    bring_photos(connection, [brought(LEAD, "a.jpg", "a")], stamp=STAMP)
    assert not take_photo_back(connection, LEAD, "a" * 64, stamp=STAMP)
