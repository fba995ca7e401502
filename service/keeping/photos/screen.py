"""Photos of objects for the screen: the thumbnails that are made for print, small and upright."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractContextManager
from pathlib import Path

from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.render.pictures.cache import ThumbnailCache
from service.render.pictures.prepare import prepare_photos
from service.render.pictures.thumbnails import Thumbnails
from service.store.shelf.files import StoredFile

LONG_SIDE_PX = 400
"""Sharp at half that size on a fine screen, and some 20 KB."""


def load_screen_photo(
    shown: StoredFile, folder: Path, borrow: Callable[[], AbstractContextManager[Desk]]
) -> bytes:
    """Give a photo as a small JPEG; one that has no thumbnails in the folder yet is decoded now.

    `borrow` lends the desk, which is only needed for that.

    Raises:
        NotFoundError: When its file is lost or cannot be used.
    """
    found = ThumbnailCache(folder).find(shown.sha256)
    if found is None:
        with borrow() as desk:
            found = _make(desk, shown)
    wide = (one for one in found.sizes if max(one.width_px, one.height_px) >= LONG_SIDE_PX)
    return next(wide, found.largest).jpeg


def _make(desk: Desk, shown: StoredFile) -> Thumbnails:
    path = desk.shelf.local_path(shown.sha256, shown.suffix)
    made, _ = prepare_photos(
        {shown.sha256: path},
        cache_folder=desk.workshop.cache_folder,
        workers=desk.workshop.decoders,
    )
    if shown.sha256 not in made:
        raise NotFoundError(shown.sha256, what="usable photo")
    return made[shown.sha256]
