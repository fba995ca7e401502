"""Gives an object photos that were chosen for it, whatever their files are called."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from service.findings import Finding
from service.keeping.desk import Desk
from service.keeping.table.photo import keep_photo
from service.keeping.table.put_down import TablePhoto
from service.records.record import PhotoRole
from service.store.history import Stamp
from service.store.open import writing
from service.store.shelf.photos import BroughtPhoto, bring_photos


def add_photos(
    desk: Desk, object_number: str, files: Mapping[str, Path], role: PhotoRole, *, stamp: Stamp
) -> tuple[int, tuple[Finding, ...]]:
    """Keep those that can be used; tell how many are new, and what is wrong with the others.

    Raises:
        NotFoundError: When there is no such object; nothing is kept then.
        StoreFullError: When the disk is full.
    """
    brought: list[BroughtPhoto] = []
    noticed: list[Finding] = []
    for name, path in files.items():
        stored, findings = keep_photo(desk, path, named=name)
        noticed += findings
        if stored is not None:
            photo = TablePhoto(stored, role)
            brought.append(BroughtPhoto(object_number, photo.file, role, stored))
    with writing(desk.engine) as connection:
        new = bring_photos(connection, brought, stamp=stamp)
    return new, tuple(noticed)
