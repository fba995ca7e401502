"""Takes back a photo that was brought under a wrong number; its file stays on the shelf."""

from __future__ import annotations

from sqlalchemy import Connection, delete

from service.store.base.bulk import load_keys
from service.store.canonical import dump_json
from service.store.history import Entry, Stamp, begin_change, write_history
from service.store.tables import objects, photos


def take_photo_back(
    connection: Connection, object_number: str, sha256: str, *, stamp: Stamp
) -> bool:
    """Take a photo from an object whose record does not name it; tell whether it had it."""
    change = begin_change(connection, stamp)
    keys = load_keys(connection, objects, "object_number", [object_number])
    gone = (
        delete(photos)
        .where(photos.c.object_id.in_(keys.values()), photos.c.sha256 == sha256)
        .where(photos.c.is_named.is_(False))
        .returning(photos.c.file)
    )
    files = list(connection.execute(gone).scalars())
    entries = [
        Entry(
            "photo taken back",
            object_number=object_number,
            detail=dump_json({"file": file, "sha256": sha256}),
        )
        for file in files
    ]
    write_history(connection, change, entries)
    return bool(files)
