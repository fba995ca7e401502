"""Proved plates made by hand."""

from __future__ import annotations

import hashlib
import random
from array import array

from service.geometry import Rect, Size
from service.render.plates.plate import FontUse, PictureUse, Plate, PlateProof, ProvedPlate


def key_of(number: int) -> str:
    """Give the key of a plate."""
    return hashlib.sha256(b"plate %d" % number).hexdigest()


def proved_plate(number: int, *, content_bytes: int = 600) -> ProvedPlate:
    """Make a plate whose words tell its number."""
    chance = random.Random(number)  # noqa: S311  Nothing is kept secret by it.
    glyphs = sorted(chance.sample(range(1, 900), 20))
    fonts = (
        FontUse(3, array("H", glyphs).tobytes(), tuple(chr(64 + one) for one in glyphs)),
        FontUse(7, array("H", [5, 6]).tobytes(), ("", "ffi")),
    )
    pictures = (PictureUse(chance.randbytes(32).hex(), 240, 180),) * (number % 3)
    content = chance.randbytes(content_bytes)
    marks = ("caution", "fragile")[: number % 3]
    plate = Plate(Size(99.1, 38.1), content, fonts, pictures, marks, f"Plate {number}, Κιβώτιο")
    return ProvedPlate(plate, PlateProof(3, 1, len(pictures), len(marks), Rect(2, 2.5, 90.25, 33)))
