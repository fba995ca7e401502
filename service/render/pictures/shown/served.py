"""Photos for a browser: upright, re-encoded without metadata, in a few widths that are kept."""

from __future__ import annotations

import contextlib
import io
from dataclasses import dataclass
from pathlib import Path

from PIL import Image

from service.errors import ServiceError
from service.render.pictures.files import write_whole
from service.render.pictures.photos import MAX_BYTES, decode_photo
from service.render.worker import Workers

WIDTHS_PX = (160, 320, 640, 1280)
"""The widths that are made; a browser scales to those between."""

# Part of the path of every picture kept: to be raised with any change to what is made here.
_VERSION = 1
_QUALITY = 80
# A photo up to so many times as tall as wide is sharp; one that is taller still is shown softer.
_TALLEST = 2
_LIMIT_SECONDS = 30.0


@dataclass(frozen=True, slots=True)
class _Job:
    path: Path
    sha256: str
    width_px: int


def choose_width_px(wanted_px: int) -> int:
    """Give the smallest width that is made and is not below the one wanted; else the largest."""
    return next((width for width in WIDTHS_PX if width >= wanted_px), WIDTHS_PX[-1])


def find_served(cache_folder: Path, sha256: str, width_px: int) -> bytes | None:
    """Give a picture that was made before; None where there is none."""
    with contextlib.suppress(OSError):
        return _path(cache_folder, sha256, width_px).read_bytes()
    return None


def serve_photo(
    path: Path, sha256: str, width_px: int, *, cache_folder: Path, workers: Workers
) -> bytes:
    """Make a picture of the whole upright photo, at most so wide and never enlarged, and keep it.

    Raises:
        PictureError: When the photo cannot be used.
        JobError: When opening it had to be stopped.
    """
    job = _Job(path, sha256, width_px)
    (jpeg,) = workers.run(_make, [job], limit_seconds=_LIMIT_SECONDS)
    if isinstance(jpeg, ServiceError):
        raise jpeg
    target = _path(cache_folder, sha256, width_px)
    # A full disk costs the next look some time, but this one no photo.
    with contextlib.suppress(OSError):
        target.parent.mkdir(parents=True, exist_ok=True)
        write_whole(target, jpeg)
    return jpeg


def measure_photo(path: Path, *, workers: Workers) -> tuple[int, int]:
    """Give width and height of a photo in pixels, once it is upright.

    Raises:
        PictureError: When the photo cannot be used.
        JobError: When opening it had to be stopped.
    """
    (size,) = workers.run(_measure, [path], limit_seconds=_LIMIT_SECONDS)
    if isinstance(size, ServiceError):
        raise size
    return size


def make_served(data: bytes, *, name: str, width_px: int) -> bytes:
    """Give the JPEG of a photo, at most so wide.

    Raises:
        PictureError: When the photo cannot be used.
    """
    # A tall photo needs more of its long side for the same width.
    image = decode_photo(data, name=name, long_side_px=_TALLEST * width_px).image
    if image.width > width_px:
        height_px = max(1, round(image.height * width_px / image.width))
        image = image.resize((width_px, height_px), Image.Resampling.LANCZOS, reducing_gap=2.0)
    target = io.BytesIO()
    image.save(target, "JPEG", quality=_QUALITY)
    return target.getvalue()


def _make(job: _Job) -> bytes:
    return make_served(_read(job.path), name=job.path.name, width_px=job.width_px)


def _measure(path: Path) -> tuple[int, int]:
    return decode_photo(_read(path), name=path.name).image.size


def _read(path: Path) -> bytes:
    with path.open("rb") as file:
        return file.read(MAX_BYTES + 1)


def _path(cache_folder: Path, sha256: str, width_px: int) -> Path:
    return cache_folder / "served" / f"v{_VERSION}" / sha256[:2] / f"{sha256}-{width_px}.jpg"
