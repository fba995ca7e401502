"""Thumbnails: a photo trimmed to its object in a few sizes, ready for a mono printer.

Takes the bytes of a photo, gives baseline JPEGs whose pixels are upright sRGB and which carry no
metadata. They are made once, when a photo arrives, and never at print time; print then takes the
smallest that gives its resolution. The same bytes in give the same bytes out.

A JPEG decoder shrinks by powers of two at nearly no cost, and a filter that brings a picture to a
size in between costs about as much as decoding it. So the largest size is what the decoder gives,
and each other is half of the one above: what is embedded has at most four times the pixels needed.
"""

from __future__ import annotations

import hashlib
import io
import math
from dataclasses import dataclass
from enum import Enum
from typing import TYPE_CHECKING

from PIL import Image, ImageFilter

from service.errors import PictureError
from service.records.photos.edit import AS_IT_CAME, PhotoEdit
from service.render.pictures.shown.edited import decode_edited
from service.render.pictures.trim import find_object_box
from service.units import dots_from_mm

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from service.render.pictures.regions import Box

    Bands = tuple[Image.Image, ...]

# Part of the name of every stored thumbnail: to be raised with any change to what is made here.
LADDER_VERSION = 2

# No size is made below the smallest picture of a card, 16 mm at 300 dpi.
LEAST_PX = 189
# A picture of more than this many times the pixels a side that its grade asks for is brought down.
_MOST_RATIO = 2.5
# The first decoding gives the whole picture at least this many times those pixels, for an object
# fills the larger part of most photos; a photo of a smaller one is decoded again, more finely.
_FIRST_LOOK_RATIO = 1.66

_QUALITY = 85
_SUBSAMPLING = "4:2:0"

# Contrast: this share of the pixels may become full black, and as many full white, but the darkest
# is taken from no lighter than the first level and the lightest from no darker than the second.
_CUT_RATIO = 0.005
_DARKEST_FROM, _LIGHTEST_FROM = 40, 215

# Sharpening adds a fifth or so of the difference from the neighbours, to the brightness alone.
_SHARPEN = ImageFilter.Kernel((3, 3), [-1, -2, -1, -2, 52, -2, -1, -2, -1], scale=40)


class Grade(Enum):
    """How fine a photo is made, by the object's long side in pixels, where the photo holds it.

    SMALL is 38 mm at 300 dpi, the pictures of lists and lids; LARGE is 102 mm, those of cover
    cards. They are made and kept apart, so that what is printed never hangs on what was before.
    """

    SMALL = 449
    LARGE = 1200


@dataclass(frozen=True, slots=True)
class Thumbnail:
    """One size of a photo; its bytes are at hand, or in a file from `offset_bytes` on."""

    width_px: int
    height_px: int
    sha256: str
    size_bytes: int
    source: bytes | Path
    offset_bytes: int = 0

    @property
    def jpeg(self) -> bytes:
        """The JPEG file, read anew each time where it is stored.

        Raises:
            PictureError: When the stored bytes are no longer those that were written.
        """
        jpeg = self.read()
        if hashlib.sha256(jpeg).hexdigest() != self.sha256:
            raise PictureError(self._name, reason="the stored thumbnail is damaged")
        return jpeg

    def read(self) -> bytes:
        """Read the JPEG file as it stands, for whoever checks it later.

        Raises:
            PictureError: When it cannot be read.
        """
        if isinstance(self.source, bytes):
            return self.source
        try:
            with open(self.source, "rb", buffering=0) as file:  # noqa: PTH123 - a tenth of the time.
                file.seek(self.offset_bytes)
                return file.read(self.size_bytes)
        except OSError as error:
            reason = "the stored thumbnail cannot be read"
            raise PictureError(self._name, reason=reason) from error

    @property
    def _name(self) -> str:
        return "a thumbnail" if isinstance(self.source, bytes) else self.source.name


@dataclass(frozen=True, slots=True)
class Thumbnails:
    """The sizes of one photo, smallest first, all of one shape; there is at least one."""

    sizes: tuple[Thumbnail, ...]
    grade: Grade = Grade.SMALL

    @property
    def largest(self) -> Thumbnail:
        """The size with the most pixels: all that the photo holds of its object, up to a limit."""
        return self.sizes[-1]

    def find(self, sha256: str) -> Thumbnail | None:
        """Give the size that has this hash."""
        return next((size for size in self.sizes if size.sha256 == sha256), None)


def make_thumbnails(
    data: bytes, *, name: str, grade: Grade = Grade.SMALL, edit: PhotoEdit = AS_IT_CAME
) -> Thumbnails:
    """Decode a photo, trim it to its object, and give it in every size down to the smallest.

    One that somebody has cropped is not trimmed any more.

    Raises:
        PictureError: When the photo cannot be used.
    """
    trimmed = _trimmed_photo(data, name=name, grade=grade, edit=edit)
    bands = _with_contrast(trimmed).convert("YCbCr").split()
    return Thumbnails(tuple(_encoded(step) for step in _steps(bands))[::-1], grade)


def choose_thumbnail(
    thumbnails: Thumbnails, width_mm: float, height_mm: float, resolution_dpi: float = 300.0
) -> Thumbnail:
    """Give the smallest size that is sharp when fitted whole into a space; else the largest."""
    needed_px = _needed_px(thumbnails, width_mm, height_mm, resolution_dpi)
    enough = (size for size in thumbnails.sizes if max(size.width_px, size.height_px) >= needed_px)
    return next(enough, thumbnails.largest)


def is_finer_needed(
    thumbnails: Thumbnails, width_mm: float, height_mm: float, resolution_dpi: float = 300.0
) -> bool:
    """Tell whether a photo fitted whole into a space wants the large grade and has the small."""
    needed_px = _needed_px(thumbnails, width_mm, height_mm, resolution_dpi)
    largest = thumbnails.largest
    return thumbnails.grade is Grade.SMALL and max(largest.width_px, largest.height_px) < needed_px


def halve(bands: Bands) -> Bands:
    """Give brightness and the two colours at half the size.

    The brightness is filtered with care; the colours are averaged, as the JPEG does once more.
    """
    brightness, *colours = bands
    averaged = tuple(colour.reduce(2) for colour in colours)
    return (brightness.resize(averaged[0].size, Image.Resampling.LANCZOS), *averaged)


def _needed_px(
    thumbnails: Thumbnails, width_mm: float, height_mm: float, resolution_dpi: float
) -> int:
    """Give the long side that is sharp in a space."""
    largest = thumbnails.largest
    scale_ratio = min(
        dots_from_mm(width_mm, resolution_dpi=resolution_dpi) / largest.width_px,
        dots_from_mm(height_mm, resolution_dpi=resolution_dpi) / largest.height_px,
    )
    return round(scale_ratio * max(largest.width_px, largest.height_px))


def _trimmed_photo(data: bytes, *, name: str, grade: Grade, edit: PhotoEdit) -> Image.Image:
    """Give the object in at least the pixels of the grade, or in all that the photo holds."""
    look_px = math.ceil(_FIRST_LOOK_RATIO * grade.value)
    photo = decode_edited(data, name=name, edit=edit, long_side_px=look_px)
    image = photo.image
    box = find_object_box(image) if edit.crop is None else (0, 0, *image.size)
    object_px, seen_px = max(box[2] - box[0], box[3] - box[1]), max(image.size)
    if object_px < grade.value and seen_px < photo.source_long_side_px:
        wanted_px = math.ceil(grade.value * seen_px / object_px)
        finer = decode_edited(data, name=name, edit=edit, long_side_px=wanted_px).image
        image, box = finer, _enlarged(box, image.size, finer.size)
    trimmed = image.crop(box)
    while max(trimmed.size) > _MOST_RATIO * grade.value:
        trimmed = trimmed.reduce(2)
    return trimmed


def _enlarged(box: Box, size: tuple[int, int], finer: tuple[int, int]) -> Box:
    """Bring a box found on a picture of `size` to the same picture at `finer`."""
    across, down = finer[0] / size[0], finer[1] / size[1]
    return (
        math.floor(box[0] * across),
        math.floor(box[1] * down),
        min(finer[0], math.ceil(box[2] * across)),
        min(finer[1], math.ceil(box[3] * down)),
    )


def _with_contrast(image: Image.Image) -> Image.Image:
    """Stretch the brightness a little; all three colours alike, so that hues stay."""
    levels = image.convert("L").histogram()
    cut = _CUT_RATIO * sum(levels)
    low = min(_DARKEST_FROM, _level_past(levels, cut))
    high = max(_LIGHTEST_FROM, 255 - _level_past(levels[::-1], cut))
    table = [min(255, max(0, round(255 * (level - low) / (high - low)))) for level in range(256)]
    return image.point(table * 3)


def _level_past(levels: list[int], pixels: float) -> int:
    """Give the first level at which more than `pixels` have been counted."""
    counted = 0
    for level, count in enumerate(levels):
        counted += count
        if counted > pixels:
            return level
    return len(levels) - 1


def _steps(bands: Bands) -> Iterator[Bands]:
    """Give the picture in each size, largest first."""
    yield bands
    while max(bands[0].size) >= 2 * LEAST_PX:
        bands = halve(bands)
        yield bands


def _encoded(bands: Bands) -> Thumbnail:
    brightness, *colours = bands
    sharp = Image.merge("YCbCr", (brightness.filter(_SHARPEN), *colours))
    target = io.BytesIO()
    sharp.save(target, "JPEG", quality=_QUALITY, subsampling=_SUBSAMPLING)
    jpeg = target.getvalue()
    digest = hashlib.sha256(jpeg).hexdigest()
    return Thumbnail(sharp.width, sharp.height, digest, len(jpeg), jpeg)
