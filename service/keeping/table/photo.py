"""Keeps a photo from the packing table: opened once in a child process, then put on the shelf."""

from __future__ import annotations

from pathlib import Path, PurePath

from service.findings import Finding
from service.keeping.desk import Desk
from service.render.pictures.prepare import prepare_photos
from service.store.shelf.files import StoredFile

_ENDINGS = frozenset(
    (".jpg", ".jpeg", ".png", ".heic", ".heif", ".webp", ".avif", ".tif", ".tiff", ".gif", ".bmp")
)
_USUAL_ENDING = ".jpg"


def keep_photo(
    desk: Desk, path: Path, *, named: str
) -> tuple[StoredFile | None, tuple[Finding, ...]]:
    """Put a photo on the shelf, and tell what was noticed; None where it cannot be used.

    Only the ending of its name is looked at: which object it shows is said by whoever sends it.

    Raises:
        StoreFullError: When the disk is full.
    """
    ending = PurePath(named).suffix.lower()
    suffix = ending if ending in _ENDINGS else _USUAL_ENDING
    usable, findings = prepare_photos(
        {"The photo": path},
        cache_folder=desk.workshop.cache_folder,
        workers=desk.workshop.decoders,
    )
    stored = desk.shelf.put(path, suffix) if usable else None
    return stored, findings
