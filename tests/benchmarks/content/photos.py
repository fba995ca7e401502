"""Photographs made of gradients and grain, with as many bytes as real ones have."""

from __future__ import annotations

import hashlib
import io
from collections.abc import Iterator
from pathlib import Path

import numpy as np
from PIL import Image

THUMBNAIL_PX = 449
"""38 mm at 300 dpi."""
PHOTO_PX = (4000, 3000)
PHOTOS = 12
_OCTAVES = ((4, 120), (16, 70), (64, 35))
_GRAIN = (3, 9)
_PHOTO_GRAIN = 9


def make_thumbnails(folder: Path, count: int) -> str:
    """Write the thumbnails, 0000.jpg and on; gives the SHA-256 of all raw pixels."""
    digest = hashlib.sha256()
    for number in range(count):
        grain = _GRAIN[0] + number % (_GRAIN[1] - _GRAIN[0] + 1)
        pixels = _pixels(number, (THUMBNAIL_PX, THUMBNAIL_PX), grain)
        digest.update(pixels.tobytes())
        _save(pixels, thumbnail_path(folder, number), quality=85)
    return digest.hexdigest()


def make_photos(folder: Path) -> str:
    """Write photos as a camera of 12 megapixels does; gives the SHA-256 of all raw pixels."""
    digest = hashlib.sha256()
    for number in range(PHOTOS):
        pixels = _pixels(100_000 + number, PHOTO_PX, _PHOTO_GRAIN)
        digest.update(pixels.tobytes())
        _save(pixels, folder / f"photo{number:02d}.jpg", quality=90)
    return digest.hexdigest()


def thumbnail_path(folder: Path, number: int) -> Path:
    """Name the file of the n-th thumbnail."""
    return folder / f"{number:04d}.jpg"


def photo_paths(folder: Path) -> Iterator[Path]:
    """Name the files of the large photos."""
    return (folder / f"photo{number:02d}.jpg" for number in range(PHOTOS))


def _pixels(
    seed: int, size: tuple[int, int], grain: int
) -> np.ndarray[tuple[int, ...], np.dtype[np.uint8]]:
    """Give height x width x 3 levels, by whole numbers alone, so that every machine agrees."""
    chance = np.random.default_rng(seed)
    total = np.zeros((size[1], size[0], 3), dtype=np.int16)
    for cells, height in _OCTAVES:
        coarse = chance.integers(0, height, (cells, cells, 3), dtype=np.uint8)
        smooth = Image.fromarray(coarse).resize(size, Image.Resampling.BICUBIC)
        total += np.asarray(smooth, dtype=np.int16)
    total += chance.integers(-grain, grain + 1, (size[1], size[0], 1), dtype=np.int16)
    return np.clip(total, 0, 255).astype(np.uint8)


def _save(
    pixels: np.ndarray[tuple[int, ...], np.dtype[np.uint8]], path: Path, *, quality: int
) -> None:
    target = io.BytesIO()
    Image.fromarray(pixels).save(target, "JPEG", quality=quality, subsampling="4:2:0")
    path.write_bytes(target.getvalue())
