from __future__ import annotations

from dataclasses import replace

import pytest
from sqlalchemy import Connection, update

from service.errors import NotFoundError
from service.records.record import ObjectRecord, PhotoReference, PhotoRole
from service.store.shelf.files import StoredFile
from service.store.shelf.photos import (
    BroughtPhoto,
    StoredPhoto,
    bring_photos,
    find_photo_files,
    load_file_names,
    save_photos,
)
from service.store.tables import photos
from tests.store.made import HAT, LEAD, STAMP, rows


def test_a_photo_that_was_brought_stays_known(connection: Connection) -> None:
    """Photos named anew keep the stored file of the same name, and those gone are gone."""
    front, back = PhotoReference("a.jpg"), PhotoReference("b.jpg", PhotoRole.BACK)
    record = ObjectRecord(LEAD, photos=(front, back))
    save_photos(connection, [record])
    connection.execute(update(photos).values(sha256="f00d"))
    again = replace(record, photos=(back, PhotoReference("c.jpg", PhotoRole.DETAIL)))
    save_photos(connection, [again])
    assert rows(connection, photos) == [
        (1, 1, "b.jpg", "back", "f00d", True),
        (1, 2, "c.jpg", "detail", "", True),
    ]


def brought(number: str, file: str, sha256: str, role: PhotoRole = PhotoRole.FRONT) -> BroughtPhoto:
    """Give a photo whose file lies on the shelf."""
    return BroughtPhoto(number, file, role, StoredFile(sha256 * 64, ".jpg", 9))


def test_photos_that_are_brought_are_found(connection: Connection) -> None:
    """Named photos get their file, others come behind them; the same again is nothing new."""
    save_photos(connection, [ObjectRecord(LEAD, photos=(PhotoReference("a.jpg"),))])
    some = [brought(LEAD, "a.jpg", "a"), brought(LEAD, "1931.14.2 back.jpg", "b", PhotoRole.BACK)]
    assert bring_photos(connection, some, stamp=STAMP) == 2
    assert bring_photos(connection, some, stamp=STAMP) == 0
    assert find_photo_files(connection, [LEAD, HAT]) == {
        LEAD: (
            StoredPhoto("a.jpg", PhotoRole.FRONT, "a" * 64, ".jpg"),
            StoredPhoto("1931.14.2 back.jpg", PhotoRole.BACK, "b" * 64, ".jpg"),
        )
    }
    assert load_file_names(connection).keys() == {"a" * 64, "b" * 64}


def test_what_was_brought_outlives_another_import(connection: Connection) -> None:
    """A photo no record names stays with its object; another picture takes its own place."""
    bring_photos(connection, [brought(LEAD, "1931.14.2.jpg", "a")], stamp=STAMP)
    save_photos(connection, [ObjectRecord(LEAD, photos=(PhotoReference("n.jpg"),))])
    assert bring_photos(connection, [brought(LEAD, "1931.14.2.jpg", "c")], stamp=STAMP) == 1
    (photo,) = find_photo_files(connection, [LEAD])[LEAD]
    assert photo.stored_name == "c" * 64 + ".jpg"


def test_a_photo_of_nothing_is_told(connection: Connection) -> None:
    """A photo is brought for an object that is there."""
    with pytest.raises(NotFoundError, match=r"X\.999"):
        bring_photos(connection, [brought("X.999", "a.jpg", "a")], stamp=STAMP)
