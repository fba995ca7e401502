"""Changes of how an object shows its photos, and the file behind a photo that is printed."""

from __future__ import annotations

from dataclasses import dataclass, replace

from service.errors import FileNotStoredError, UnusableCropError
from service.keeping.desk import Desk
from service.records.photos.edit import (
    LEAST_CROP_PX,
    QUARTERS,
    PhotoCrop,
    PhotoEdit,
    make_crop,
)
from service.records.record import PhotoRole
from service.render.pictures.prepare import PhotoSource
from service.render.pictures.shown.edited import EditedPhoto
from service.render.pictures.shown.served import measure_photo
from service.sentence import Sentence
from service.store.history import Stamp
from service.store.open import reading, writing
from service.store.shelf.files import FileShelf
from service.store.shelf.photos import StoredPhoto
from service.store.shelf.shown import ShownPhoto, find_shown, show_photo

Ratios = tuple[float, float, float, float]
WHOLE: Ratios = (0, 0, 1, 1)
"""The crop of a photo that is shown whole."""


@dataclass(frozen=True, slots=True)
class PhotoChange:
    """What is to become of a photo; None leaves it as it is.

    `crop` is left, top, right and bottom in shares of the upright photo, before it is turned;
    `turns` counts quarter turns clockwise from how it came.
    """

    turns: int | None = None
    crop: Ratios | None = None
    role: PhotoRole | None = None
    is_printed: bool | None = None
    is_removed: bool | None = None


def find_source(shelf: FileShelf, photo: StoredPhoto) -> PhotoSource:
    """Give the file behind a photo, with how it is shown where that is not as it came."""
    path = shelf.local_path(photo.sha256, photo.suffix)
    return EditedPhoto(path, photo.edit) if photo.edit.key else path


def change_photo(
    desk: Desk, object_number: str, sha256: str, change: PhotoChange, *, stamp: Stamp
) -> ShownPhoto:
    """Show a photo otherwise; the file stays as it is, and cards that showed it become wrong.

    Raises:
        NotFoundError: When there is no such object, or it has no such photo.
        UnusableCropError: When the part is none, or smaller than 16 pixels.
        PictureError: When the photo cannot be opened to be measured.
    """
    with reading(desk.engine) as connection:
        seen = find_shown(connection, object_number, sha256)
    crop = None if change.crop is None else _measured_crop(desk, seen, change.crop)
    with writing(desk.engine) as connection:
        now = find_shown(connection, object_number, sha256)
        wanted = _changed(now, change, crop)
        return show_photo(connection, object_number, wanted, stamp=stamp)


def _changed(now: ShownPhoto, change: PhotoChange, crop: PhotoCrop | None) -> ShownPhoto:
    turns = now.edit.turns if change.turns is None else change.turns % QUARTERS
    edit = PhotoEdit(turns, now.edit.crop if change.crop is None else crop)
    return replace(
        now,
        edit=edit,
        role=now.role if change.role is None else change.role,
        is_printed=now.is_printed if change.is_printed is None else change.is_printed,
        is_removed=now.is_removed if change.is_removed is None else change.is_removed,
    )


def _measured_crop(desk: Desk, shown: ShownPhoto, ratios: Ratios) -> PhotoCrop | None:
    """Make a crop that leaves enough of the photo.

    Raises:
        UnusableCropError: When the part is none, or too small.
        FileNotStoredError: When the file of the photo is lost.
    """
    try:
        crop = make_crop(ratios)
    except ValueError as error:
        raise UnusableCropError(shown.file, reason=str(error)) from error
    if crop is not None:
        path = desk.shelf.local_path(shown.sha256, shown.suffix)
        if not path.is_file():
            raise FileNotStoredError(shown.sha256)
        size_px = measure_photo(path, workers=desk.workshop.decoders)
        left, top, right, bottom = crop.box_px(*size_px)
        if min(right - left, bottom - top) < LEAST_CROP_PX:
            told = f"{right - left} x {bottom - top} pixels would be left"
            reason = Sentence(
                "{told}; {least_crop_px} each way are needed.",
                told=told,
                least_crop_px=LEAST_CROP_PX,
            )
            raise UnusableCropError(shown.file, reason=reason)
    return crop
