from __future__ import annotations

from dataclasses import replace

from sqlalchemy import Connection, update

from service.records.record import ObjectRecord, PhotoReference, PhotoRole
from service.store.photos import save_photos
from service.store.tables import photos
from tests.store.made import LEAD, rows


def test_a_photo_that_was_brought_stays_known(connection: Connection) -> None:
    """Photos named anew keep the stored file of the same name, and those gone are gone."""
    front, back = PhotoReference("a.jpg"), PhotoReference("b.jpg", PhotoRole.BACK)
    record = ObjectRecord(LEAD, photos=(front, back))
    save_photos(connection, [record], only=[LEAD])
    connection.execute(update(photos).values(sha256="f00d"))
    again = replace(record, photos=(back, PhotoReference("c.jpg", PhotoRole.DETAIL)))
    save_photos(connection, [again], only=[LEAD])
    assert rows(connection, photos) == [
        (1, 1, "b.jpg", "back", "f00d"),
        (1, 2, "c.jpg", "detail", ""),
    ]
