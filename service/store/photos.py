"""The photos that records name, each with the stored file once it has been brought."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from sqlalchemy import Connection, delete, insert, select

from service.records.record import ObjectRecord
from service.store.bulk import execute_rows, in_portions
from service.store.tables import objects, photos


def save_photos(
    connection: Connection, records: Iterable[ObjectRecord], *, only: Sequence[str]
) -> None:
    """Name the photos of the objects `only` names anew; a file already brought stays known."""
    keys = _load_keys(connection, only)
    brought = _forget(connection, list(keys.values()))
    first = {record.object_number: record for record in reversed(list(records))}
    rows = [
        {
            "object_id": key,
            "position": position,
            "file": photo.file,
            "role": photo.role.value,
            "sha256": brought.get((key, photo.file), ""),
        }
        for number, key in keys.items()
        for position, photo in enumerate(first[number].photos, 1)
    ]
    execute_rows(connection, insert(photos), rows)


def _load_keys(connection: Connection, numbers: Sequence[str]) -> dict[str, int]:
    keys: dict[str, int] = {}
    for some in in_portions(numbers):
        query = select(objects.c.object_number, objects.c.id).where(
            objects.c.object_number.in_(some)
        )
        keys.update(dict(connection.execute(query).all()))
    return keys


def _forget(connection: Connection, keys: Sequence[int]) -> dict[tuple[int, str], str]:
    """Take the rows of these objects away, and give the files that were brought."""
    brought: dict[tuple[int, str], str] = {}
    for some in in_portions(keys):
        query = select(photos.c.object_id, photos.c.file, photos.c.sha256).where(
            photos.c.object_id.in_(some)
        )
        for key, file, sha256 in connection.execute(query):
            brought[key, file] = sha256
        connection.execute(delete(photos).where(photos.c.object_id.in_(some)))
    return brought
