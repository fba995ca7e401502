"""A photo cropped and turned as somebody chose, without touching its file."""

from __future__ import annotations

import hashlib
import math
from dataclasses import dataclass
from pathlib import Path

from PIL import Image

from service.records.photos.edit import AS_IT_CAME, PhotoEdit
from service.render.pictures.photos import Photo, decode_photo

_TURNS = {
    1: Image.Transpose.ROTATE_270,
    2: Image.Transpose.ROTATE_180,
    3: Image.Transpose.ROTATE_90,
}
"""Pillow turns against the clock, and edits with it."""


@dataclass(frozen=True, slots=True)
class EditedPhoto:
    """The bytes of a photo, or the file that holds them, and how it is shown."""

    source: bytes | Path
    edit: PhotoEdit


def decode_edited(
    data: bytes, *, name: str, edit: PhotoEdit = AS_IT_CAME, long_side_px: int | None = None
) -> Photo:
    """Give what is shown of a photo; the stored size is that of what is shown.

    With `long_side_px` it may come smaller than stored, but never below that.

    Raises:
        PictureError: When the photo cannot be used.
    """
    photo = decode_photo(data, name=name, long_side_px=_whole_px(long_side_px, edit))
    if edit == AS_IT_CAME:
        return photo
    whole, shown = photo.image, photo.image
    if edit.crop is not None:
        shown = shown.crop(edit.crop.box_px(*whole.size))
    if edit.turns:
        shown = shown.transpose(_TURNS[edit.turns])
    scale_ratio = photo.source_long_side_px / max(whole.size)
    return Photo(shown, round(max(shown.size) * scale_ratio))


def digest_of_edited(digest: str, edit: PhotoEdit) -> str:
    """Give the hash under which the thumbnails of an edited photo are kept.

    `digest` is the SHA-256 of its bytes, and stays where it is shown as it came.
    """
    if edit == AS_IT_CAME:
        return digest
    return hashlib.sha256(f"{digest}{edit.key}".encode()).hexdigest()


def _whole_px(long_side_px: int | None, edit: PhotoEdit) -> int | None:
    """Say how large the whole must be for what is shown to have this side at least."""
    if long_side_px is None or edit.crop is None:
        return long_side_px
    left, top, right, bottom = edit.crop.ratios
    return math.ceil(long_side_px / min(right - left, bottom - top))
