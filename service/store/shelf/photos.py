"""The photos that records name, each with the stored file once it has been brought."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, delete, func, insert, select, update

from service.errors import NotFoundError
from service.records.photos.edit import AS_IT_CAME, PhotoEdit
from service.records.record import ObjectRecord, PhotoRole
from service.store.base.bulk import execute_rows, in_portions, load_keys
from service.store.canonical import check_text, dump_json
from service.store.history import Entry, Stamp, begin_change, write_history
from service.store.shelf.files import StoredFile
from service.store.shelf.shown import load_shown
from service.store.tables import objects, photos, stored_files


@dataclass(frozen=True, slots=True)
class StoredPhoto:
    """A photo of an object whose file lies on the shelf, and how it is shown."""

    file: str
    role: PhotoRole
    sha256: str
    suffix: str
    edit: PhotoEdit = AS_IT_CAME

    @property
    def stored_name(self) -> str:
        """The name that changes when the picture does, or what is shown of it."""
        return f"{self.sha256}{self.edit.key}{self.suffix}"


@dataclass(frozen=True, slots=True)
class BroughtPhoto:
    """A photo that was brought for an object, and its file on the shelf."""

    object_number: str
    file: str
    role: PhotoRole
    stored: StoredFile


def save_photos(connection: Connection, records: Sequence[ObjectRecord]) -> None:
    """Name the photos of these objects anew; a file already brought stays known.

    Behind those it names stay the photos that were brought under the object's number.
    """
    named = {record.object_number: record for record in records}
    keys = load_keys(connection, objects, "object_number", list(named))
    brought = _forget(connection, list(keys.values()))
    rows = [
        row
        for number, key in keys.items()
        for row in _rows(key, named[number], brought.get(key, {}))
    ]
    execute_rows(connection, insert(photos), rows)


def bring_photos(connection: Connection, brought: Sequence[BroughtPhoto], *, stamp: Stamp) -> int:
    """Note photos whose files lie on the shelf, and say how many were not known before.

    Raises:
        NotFoundError: When one of the objects is not in the store.
    """
    change = begin_change(connection, stamp)
    numbers = sorted({photo.object_number for photo in brought})
    keys = load_keys(connection, objects, "object_number", numbers)
    entries: list[Entry] = []
    for photo in brought:
        if photo.object_number not in keys:
            raise NotFoundError(photo.object_number, what="object")
        if _bring(connection, keys[photo.object_number], photo):
            detail = dump_json({"file": photo.file, "sha256": photo.stored.sha256})
            entries.append(Entry("photo brought", object_number=photo.object_number, detail=detail))
    _note_files(connection, [photo.stored for photo in brought], stamp)
    write_history(connection, change, entries)
    return len(entries)


def find_photo_files(
    connection: Connection, object_numbers: Sequence[str]
) -> dict[str, tuple[StoredPhoto, ...]]:
    """Find the photos that objects show on their cards, in order: brought, and not kept off."""
    return {
        number: tuple(
            StoredPhoto(one.file, one.role, one.sha256, one.suffix, one.edit)
            for one in shown
            if one.is_on_cards
        )
        for number, shown in load_shown(connection, object_numbers).items()
    }


def note_file(connection: Connection, stored: StoredFile, *, stamp: Stamp) -> None:
    """Note a file that lies on the shelf; one that is known already stays so."""
    _note_files(connection, [stored], stamp)


def load_file_names(connection: Connection) -> dict[str, StoredFile]:
    """Load every file that the store names, by its SHA-256."""
    query = select(stored_files.c.sha256, stored_files.c.suffix, stored_files.c.length_bytes)
    return {sha256: StoredFile(sha256, *rest) for sha256, *rest in connection.execute(query)}


def _rows(key: int, record: ObjectRecord, brought: dict[str, _Brought]) -> list[dict[str, object]]:
    named = {photo.file: photo.role.value for photo in record.photos}
    others = {
        file: before.role
        for file, before in brought.items()
        if file not in named and not before.is_named
    }
    return [
        {
            "object_id": key,
            "position": position,
            "file": file,
            "role": role,
            "sha256": brought[file].sha256 if file in brought else "",
            "is_named": file in named,
        }
        for position, (file, role) in enumerate((named | others).items(), 1)
    ]


@dataclass(frozen=True, slots=True)
class _Brought:
    """A photo as it was before its object was saved anew."""

    role: str
    sha256: str
    is_named: bool


def _forget(connection: Connection, keys: Sequence[int]) -> dict[int, dict[str, _Brought]]:
    """Take the rows of these objects away, and give what is known of the files brought."""
    brought: dict[int, dict[str, _Brought]] = {}
    for some in in_portions(keys):
        query = (
            select(
                photos.c.object_id,
                photos.c.file,
                photos.c.role,
                photos.c.sha256,
                photos.c.is_named,
            )
            .where(photos.c.object_id.in_(some), photos.c.sha256 != "")
            .order_by(photos.c.object_id, photos.c.position)
        )
        for key, file, *rest in connection.execute(query):
            brought.setdefault(key, {})[file] = _Brought(*rest)
        connection.execute(delete(photos).where(photos.c.object_id.in_(some)))
    return brought


def _bring(connection: Connection, key: int, photo: BroughtPhoto) -> bool:
    """Give a photo its file; tell whether that is new."""
    row = photos.c.object_id == key
    query = select(photos.c.sha256).where(row, photos.c.file == photo.file)
    before = connection.execute(query).scalars().all()
    if photo.stored.sha256 in before:
        return False
    if before:
        connection.execute(
            update(photos)
            .where(row, photos.c.file == photo.file)
            .values(sha256=photo.stored.sha256)
        )
        return True
    last = connection.execute(select(func.max(photos.c.position)).where(row)).scalar() or 0
    connection.execute(
        insert(photos).values(
            object_id=key,
            position=last + 1,
            file=check_text(photo.file),
            role=photo.role.value,
            sha256=photo.stored.sha256,
            is_named=False,
        )
    )
    return True


def _note_files(connection: Connection, stored: Sequence[StoredFile], stamp: Stamp) -> None:
    wanted = {one.sha256: one for one in stored}
    known: set[str] = set()
    for some in in_portions(sorted(wanted)):
        query = select(stored_files.c.sha256).where(stored_files.c.sha256.in_(some))
        known.update(connection.execute(query).scalars())
    rows = [
        {
            "sha256": one.sha256,
            "suffix": one.suffix,
            "length_bytes": one.length_bytes,
            "at": stamp.at,
        }
        for sha256, one in wanted.items()
        if sha256 not in known
    ]
    execute_rows(connection, insert(stored_files), rows)
