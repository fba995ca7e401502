"""Save pictures in the forms that cameras, scanners and old workflows leave behind."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING

import numpy as np
import pillow_heif
from PIL import Image

if TYPE_CHECKING:
    from pathlib import Path

    from numpy.typing import NDArray

    Array = NDArray[np.float64]

ORIENTATION_TAG, GPS_TAG = 0x0112, 0x8825
LYING = {"1954.3.19_front.jpg"}
CMYK = {"1999.103.2_front.jpg"}
WITH_POSITION = {"1902.7_front.jpg"}
MOST_BYTES = 165_000


def save(screen: Array, path: Path) -> None:
    """Save screen colours under the name, in the form the name or the lists above ask for."""
    if path.suffix == ".png":
        _save_sixteen_bits(screen, path)
        return
    photo = Image.fromarray((np.clip(screen, 0, 1) * 255 + 0.5).astype(np.uint8))
    if path.suffix == ".heic":
        pillow_heif.register_heif_opener()
        photo.save(path, quality=62)
    elif path.suffix == ".webp":
        photo.save(path, quality=84, method=6)
    else:
        _save_jpeg(photo, path)


def _save_jpeg(photo: Image.Image, path: Path) -> None:
    options: dict[str, object] = {}
    exif = Image.Exif()
    if path.name in LYING:
        photo = photo.transpose(Image.Transpose.ROTATE_90)
        exif[ORIENTATION_TAG] = 6
    if path.name in WITH_POSITION:
        # The position is that of no place on land: a point in the open ocean.
        exif[GPS_TAG] = {1: "N", 2: (47.0, 11.0, 42.0), 3: "W", 4: (29.0, 17.0, 6.0)}
    if len(exif):
        options["exif"] = exif
    if path.name in CMYK:
        photo = photo.convert("CMYK")
    for quality in (92, 89, 86, 82, 78, 72):
        stream = io.BytesIO()
        photo.save(stream, "JPEG", quality=quality, optimize=True, dpi=(300, 300), **options)
        if stream.tell() <= MOST_BYTES:
            break
    path.write_bytes(stream.getvalue())


def _save_sixteen_bits(screen: Array, path: Path) -> None:
    """Save greys of nine significant bits in sixteen, so that the file stays small."""
    grey = np.clip(screen @ np.array([0.2126, 0.7152, 0.0722]), 0, 1)
    steps = (grey * 511 + 0.5).astype(np.uint16) << 7
    Image.fromarray(steps).save(path, optimize=True)
