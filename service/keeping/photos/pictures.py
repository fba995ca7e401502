"""Photos for a browser: the whole of one, or what the cards of an object show of it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from service.errors import FileNotStoredError
from service.keeping.desk import Desk
from service.keeping.photos.shown import find_source
from service.records.record import PhotoRole
from service.render.pictures.cache import ThumbnailCache
from service.render.pictures.prepare import prepare_photos
from service.render.pictures.shown.edited import digest_of_edited
from service.render.pictures.shown.served import choose_width_px, find_served, serve_photo
from service.render.pictures.thumbnails import Thumbnails
from service.store.handles import Connection
from service.store.open import reading
from service.store.shelf.photos import StoredPhoto
from service.store.shelf.shown import find_shown, name_photo_file


@dataclass(frozen=True, slots=True)
class WantedPicture:
    """A picture of a photo, at least so wide where there is one; every one is without metadata.

    With an object it is what the cards of that object show: cropped or trimmed, turned, of good
    contrast. Else it is the whole photo, upright, as crops are drawn on it.
    """

    sha256: str
    width_px: int
    object_number: str = ""


def find_picture(connection: Connection, cache_folder: Path, wanted: WantedPicture) -> bytes | None:
    """Give a picture that was made before; None where it has to be made.

    Raises:
        NotFoundError: When no object has such a photo, or not the one that is named.
    """
    photo = _find_photo(connection, wanted)
    if not wanted.object_number:
        return find_served(cache_folder, wanted.sha256, choose_width_px(wanted.width_px))
    digest = digest_of_edited(wanted.sha256, photo.edit)
    found = ThumbnailCache(cache_folder).find(digest)
    return None if found is None else _choose(found, wanted.width_px)


def make_picture(desk: Desk, wanted: WantedPicture) -> bytes:
    """Give a picture, and keep it for the next time.

    Raises:
        NotFoundError: When no object has such a photo, or not the one that is named.
        FileNotStoredError: When its file is lost, or cannot be used on cards.
        PictureError: When the photo cannot be used.
    """
    with reading(desk.engine) as connection:
        photo = _find_photo(connection, wanted)
    folder, workers = desk.workshop.cache_folder, desk.workshop.decoders
    if wanted.object_number:
        sources = {wanted.sha256: find_source(desk.shelf, photo)}
        ready, _ = prepare_photos(sources, cache_folder=folder, workers=workers)
        if not ready:
            raise FileNotStoredError(wanted.sha256)
        return _choose(ready[wanted.sha256], wanted.width_px)
    path = desk.shelf.local_path(photo.sha256, photo.suffix)
    if not path.is_file():
        raise FileNotStoredError(photo.sha256)
    width_px = choose_width_px(wanted.width_px)
    return serve_photo(path, photo.sha256, width_px, cache_folder=folder, workers=workers)


def _find_photo(connection: Connection, wanted: WantedPicture) -> StoredPhoto:
    if wanted.object_number:
        one = find_shown(connection, wanted.object_number, wanted.sha256)
        return StoredPhoto(one.file, one.role, one.sha256, one.suffix, one.edit)
    suffix = name_photo_file(connection, wanted.sha256)
    return StoredPhoto(wanted.sha256, PhotoRole.FRONT, wanted.sha256, suffix)


def _choose(ready: Thumbnails, width_px: int) -> bytes:
    return next((one for one in ready.sizes if one.width_px >= width_px), ready.largest).jpeg
