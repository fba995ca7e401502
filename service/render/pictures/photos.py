"""Opening photos: any file a camera, telephone or scanner leaves, made upright sRGB on white.

A photo is the one thing here that comes from anywhere, so nothing of it is trusted: only formats
named below are tried, sizes are checked before a pixel is decoded, and whatever a decoder raises
becomes a `PictureError` in plain words. What is handed on is pixels alone, without the place, time
and device that a file may tell. Decoders can still crash or hang: call this in a child process.
"""

from __future__ import annotations

import contextlib
import io
import math
import warnings
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

import pi_heif
from PIL import Image, ImageCms, ImageFile, UnidentifiedImageError

from service.errors import PictureError
from service.sentence import Sentence

MAX_BYTES = 25_000_000
MAX_PIXELS = 100_000_000
MAX_SIDE_PX = 60_000

# Formats a camera, telephone or scanner writes. Files of several pictures (MPO) open as JPEG;
# asking for MPO by name makes Pillow fail on every other format.
_FORMATS = ("JPEG", "PNG", "TIFF", "WEBP", "GIF", "BMP", "AVIF", "HEIF")

# How to turn the stored picture upright: tag 0x0112 of Exif 2.32 (JEITA CP-3451), whose values say
# where row 0 and column 0 of the stored picture lie. 1 needs no turn.
_ORIENTATION_TAG = 0x0112
_TURNS: dict[object, Image.Transpose] = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}

# Modes whose values cannot be averaged, and those that can and hold the same.
_NOT_AVERAGED = {"1": "L", "I;16": "I", "I;16B": "I", "I;16L": "I", "PA": "RGBA"}
_LEAST_FACTOR = 2

_WHITE = (255, 255, 255)
_MEGA = 1_000_000

# A second fence behind our own check, for decoders that find a larger picture inside.
Image.MAX_IMAGE_PIXELS = MAX_PIXELS
pi_heif.register_heif_opener(thumbnails=False)


@dataclass(frozen=True, slots=True)
class Photo:
    """An upright sRGB picture and the longer side of the file it came from, in pixels."""

    image: Image.Image
    source_long_side_px: int


def open_photo(data: bytes, *, name: str, long_side_px: int | None = None) -> Image.Image:
    """Give the first picture in `data` as 8-bit sRGB, upright, on white, without metadata.

    With `long_side_px` the picture may come smaller than stored, but never below that; a JPEG is
    decoded several times faster then.

    Raises:
        PictureError: When the file is not a photo we can read, damaged, or over a limit.
    """
    return decode_photo(data, name=name, long_side_px=long_side_px).image


def decode_photo(data: bytes, *, name: str, long_side_px: int | None = None) -> Photo:
    """Do as `open_photo`, and tell the stored size too.

    Raises:
        PictureError: As `open_photo`.
    """
    if len(data) > MAX_BYTES:
        raise PictureError(
            name,
            reason=Sentence("the file is larger than {max_bytes} MB", max_bytes=MAX_BYTES // _MEGA),
        )
    # Hostile files make Pillow raise nearly anything, from KeyError to struct.error.
    try:
        with _whole_files_only(), warnings.catch_warnings(action="ignore"), _opened(data) as image:
            return _decoded(image, name=name, long_side_px=long_side_px)
    except PictureError:
        raise
    except Exception as error:
        raise PictureError(name, reason=_reason(error)) from error


def _decoded(image: Image.Image, *, name: str, long_side_px: int | None) -> Photo:
    source_long_side_px = max(image.size)
    _check_size(image.size, name=name)
    # Our own check is past; a decoder that finds more pixels inside is stopped here.
    warnings.simplefilter("error", Image.DecompressionBombWarning)
    if long_side_px is not None:
        image.draft(image.mode, _size_with_long_side(image.size, long_side_px))
    image.load()
    profile = image.info.get("icc_profile")
    flat = _on_white(_reduced(_upright(image), long_side_px), profile=profile)
    # Every step behind leaves the file's own class; what it told goes here.
    flat.info = {}
    return Photo(flat, source_long_side_px)


@contextlib.contextmanager
def _whole_files_only() -> Iterator[None]:
    """Hold Pillow to whole files: another library sets its global switch to print cut ones."""
    before = ImageFile.LOAD_TRUNCATED_IMAGES
    ImageFile.LOAD_TRUNCATED_IMAGES = False
    try:
        yield
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = before


def _opened(data: bytes) -> Image.Image:
    return Image.open(io.BytesIO(data), formats=_FORMATS)


def _check_size(size: tuple[int, int], *, name: str) -> None:
    pixels = size[0] * size[1]
    if pixels > MAX_PIXELS:
        reason = Sentence(
            "too many pixels ({pixels:.0f} MP, limit {max_pixels} MP)",
            pixels=pixels / _MEGA,
            max_pixels=MAX_PIXELS // _MEGA,
        )
        raise PictureError(name, reason=reason)
    if max(size) > MAX_SIDE_PX:
        reason = Sentence(
            "one side is too long ({size} px, limit {max_side_px} px)",
            size=max(size),
            max_side_px=MAX_SIDE_PX,
        )
        raise PictureError(name, reason=reason)


def _reason(error: Exception) -> str:
    if isinstance(error, UnidentifiedImageError):
        return "the file is not a photo we can read"
    if isinstance(error, (Image.DecompressionBombError, Image.DecompressionBombWarning)):
        return f"too many pixels (limit {MAX_PIXELS // _MEGA} MP)"
    if isinstance(error, MemoryError):
        return "the photo needs too much memory"
    if isinstance(error, EOFError) or "truncated" in str(error).lower():
        return "the file is cut short"
    return "the file is damaged"


def _size_with_long_side(size: tuple[int, int], long_side_px: int) -> tuple[int, int]:
    scale_ratio = long_side_px / max(size)
    return math.ceil(size[0] * scale_ratio), math.ceil(size[1] * scale_ratio)


def _upright(image: Image.Image) -> Image.Image:
    """Turn the picture as its orientation says; a value outside 1 to 8 says nothing."""
    # Reading the metadata of real files fails about as often as decoding them.
    with contextlib.suppress(Exception):
        turn = _TURNS.get(image.getexif().get(_ORIENTATION_TAG))
        if turn is not None:
            return image.transpose(turn)
    return image


def _reduced(image: Image.Image, long_side_px: int | None) -> Image.Image:
    """Average whole blocks of pixels where far more came than are wanted, to spare memory."""
    factor = max(image.size) // long_side_px if long_side_px else 1
    if factor < _LEAST_FACTOR:
        return image
    if image.mode in _NOT_AVERAGED:
        image = image.convert(_NOT_AVERAGED[image.mode])
    if image.mode == "P":
        image = image.convert("RGBA" if image.has_transparency_data else "RGB")
    return image.reduce(factor)


def _on_white(image: Image.Image, *, profile: object) -> Image.Image:
    """Give 8-bit sRGB; what is transparent becomes white paper."""
    if image.mode.startswith(("I", "F")):
        return _grey_by_range(image).convert("RGB")
    if not image.has_transparency_data:
        return _as_srgb(image, profile=profile)
    full = image.convert("RGBA")
    paper = Image.new("RGB", image.size, _WHITE)
    paper.paste(_as_srgb(full.convert("RGB"), profile=profile), mask=full.getchannel("A"))
    return paper


def _grey_by_range(image: Image.Image) -> Image.Image:
    """Spread grey of more than 8 bits over 0 to 255 by the values it really holds.

    Pillow's own conversion cuts everything above 255 to white.
    """
    wide = image.convert("I").convert("F") if image.mode.startswith("I") else image
    low, high = _extremes(wide)
    if high <= low:
        return Image.new("L", image.size, 128)
    scale_ratio = 255.0 / (high - low)
    # Half a step is added because the conversion to 8 bits cuts off the fraction.
    return wide.point(lambda value: value * scale_ratio + (0.5 - low * scale_ratio)).convert("L")


def _extremes(image: Image.Image) -> tuple[float, float]:
    low, high = image.getextrema()
    if not (isinstance(low, (int, float)) and isinstance(high, (int, float))):
        message = "one band was expected"
        raise TypeError(message)
    if not (math.isfinite(low) and math.isfinite(high)):
        message = "the grey values are not numbers"
        raise ValueError(message)
    return low, high


def _as_srgb(image: Image.Image, *, profile: object) -> Image.Image:
    """Bring colours to sRGB by the file's own profile, or plainly where that cannot be used."""
    source = _profile_of(image, profile)
    if source is not None:
        # Profiles that are damaged, or made for another kind of picture, are common.
        with contextlib.suppress(Exception):
            converted = ImageCms.profileToProfile(image, source, _srgb(), outputMode="RGB")
            if converted is not None:
                return converted
    return image.convert("RGB")


def _profile_of(image: Image.Image, profile: object) -> ImageCms.ImageCmsProfile | None:
    """Give the profile to convert from; None where the picture is sRGB already or has none."""
    if image.mode == "LAB":
        return ImageCms.ImageCmsProfile(ImageCms.createProfile("LAB"))
    if not isinstance(profile, bytes) or image.mode not in {"L", "RGB", "CMYK"}:
        return None
    with contextlib.suppress(Exception):
        source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        if "srgb" not in ImageCms.getProfileDescription(source).lower():
            return source
    return None


@cache
def _srgb() -> ImageCms.ImageCmsProfile:
    return ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB"))
