"""Thumbnails: a photo trimmed to its object in a few fixed sizes, ready for a mono printer.

Takes the bytes of a photo, gives baseline JPEGs whose pixels are upright sRGB and which carry no
metadata. They are made once, when a photo arrives, and never at print time; print then takes the
smallest that gives its resolution. The same bytes in give the same bytes out.
"""

from __future__ import annotations

import hashlib
import io
import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PIL import Image, ImageFilter

from service.errors import PictureError
from service.render.pictures.photos import decode_photo
from service.render.pictures.trim import find_object_box
from service.units import dots_from_mm

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from service.render.pictures.regions import Box

# Long sides in pixels. At 300 dpi they print 20, 34, 54, 81, 119 and 169 mm: from the 16 mm floor
# of a crowded lid to a whole A5 card. Steps of about the square root of two keep what is embedded
# within twice the pixels that are needed. The object's own size comes on top where it is no step.
LADDER_PX = (240, 400, 640, 960, 1400, 2000)
# A step this close to the largest size is not worth its file.
_LEAST_STEP_RATIO = 0.9
# Part of the name of every stored thumbnail: to be raised with any change to what is made here.
LADDER_VERSION = 1

# A first decoding gives the whole picture this long side; an object that comes out shorter than the
# second figure (102 mm at 300 dpi) is decoded again as finely as the file allows.
_FIRST_LOOK_PX = LADDER_PX[-1]
_FINE_ENOUGH_PX = 1200

_QUALITY = 85
_SUBSAMPLING = "4:2:0"
# Pillow shrinks by whole factors first, down to this multiple of the size wanted, then filters.
_REDUCING_GAP = 3.0

# Contrast: this share of the pixels may become full black, and as many full white, but the darkest
# is taken from no lighter than the first level and the lightest from no darker than the second.
_CUT_RATIO = 0.005
_DARKEST_FROM, _LIGHTEST_FROM = 40, 215

# Sharpening adds a fifth or so of the difference from the neighbours, to the brightness alone.
_SHARPEN = ImageFilter.Kernel((3, 3), [-1, -2, -1, -2, 52, -2, -1, -2, -1], scale=40)


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
        if isinstance(self.source, bytes):
            return self.source
        return _stored(self, self.source)


@dataclass(frozen=True, slots=True)
class Thumbnails:
    """The sizes of one photo, smallest first, all of one shape; there is at least one."""

    sizes: tuple[Thumbnail, ...]

    @property
    def largest(self) -> Thumbnail:
        """The size with the most pixels: all that the photo holds of its object, up to a limit."""
        return self.sizes[-1]


def _stored(thumbnail: Thumbnail, path: Path) -> bytes:
    try:
        with path.open("rb") as file:
            file.seek(thumbnail.offset_bytes)
            jpeg = file.read(thumbnail.size_bytes)
    except OSError as error:
        raise PictureError(path.name, reason="the stored thumbnail cannot be read") from error
    if hashlib.sha256(jpeg).hexdigest() != thumbnail.sha256:
        raise PictureError(path.name, reason="the stored thumbnail is damaged")
    return jpeg


def make_thumbnails(data: bytes, *, name: str) -> Thumbnails:
    """Decode a photo, trim it to its object, and give it in every size it is large enough for.

    Raises:
        PictureError: When the photo cannot be used.
    """
    trimmed = _with_contrast(_trimmed_photo(data, name=name)).convert("YCbCr")
    return Thumbnails(tuple(_encoded(step) for step in _steps(trimmed))[::-1])


def choose_thumbnail(
    thumbnails: Thumbnails, width_mm: float, height_mm: float, resolution_dpi: float = 300.0
) -> Thumbnail:
    """Give the smallest size that is sharp when fitted whole into a space; else the largest."""
    largest = thumbnails.largest
    scale_ratio = min(
        dots_from_mm(width_mm, resolution_dpi=resolution_dpi) / largest.width_px,
        dots_from_mm(height_mm, resolution_dpi=resolution_dpi) / largest.height_px,
    )
    needed_px = round(scale_ratio * max(largest.width_px, largest.height_px))
    enough = (size for size in thumbnails.sizes if max(size.width_px, size.height_px) >= needed_px)
    return next(enough, largest)


def _trimmed_photo(data: bytes, *, name: str) -> Image.Image:
    photo = decode_photo(data, name=name, long_side_px=_FIRST_LOOK_PX)
    box = find_object_box(photo.image)
    object_px = max(box[2] - box[0], box[3] - box[1])
    seen_px = max(photo.image.size)
    if object_px >= _FINE_ENOUGH_PX or seen_px >= photo.source_long_side_px:
        return photo.image.crop(box)
    wanted_px = math.ceil(_FIRST_LOOK_PX * seen_px / object_px)
    finer = decode_photo(data, name=name, long_side_px=wanted_px).image
    return finer.crop(_enlarged(box, photo.image.size, finer.size))


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


def _steps(image: Image.Image) -> Iterator[Image.Image]:
    """Give the picture in each size, largest first, each made from the one before."""
    top_px = min(max(image.size), LADDER_PX[-1])
    lower = (side_px for side_px in reversed(LADDER_PX) if side_px < _LEAST_STEP_RATIO * top_px)
    step = image
    for side_px in (top_px, *lower):
        step = _shrunk(step, side_px)
        yield step


def _shrunk(image: Image.Image, long_side_px: int) -> Image.Image:
    scale_ratio = long_side_px / max(image.size)
    width, height = (max(1, round(side * scale_ratio)) for side in image.size)
    if (width, height) == image.size:
        return image
    return image.resize((width, height), Image.Resampling.LANCZOS, reducing_gap=_REDUCING_GAP)


def _encoded(image: Image.Image) -> Thumbnail:
    brightness, *colours = image.split()
    sharp = Image.merge("YCbCr", (brightness.filter(_SHARPEN), *colours))
    target = io.BytesIO()
    sharp.save(target, "JPEG", quality=_QUALITY, subsampling=_SUBSAMPLING)
    jpeg = target.getvalue()
    digest = hashlib.sha256(jpeg).hexdigest()
    return Thumbnail(image.width, image.height, digest, len(jpeg), jpeg)
