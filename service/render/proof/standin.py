"""Plain squares of one tone in the place of photos and marks, for the proof of a face.

They cost little time to decode or to draw, and whatever is printed under or over them is seen. That
the finished file carries the true photos and marks is for its own proof to say; that a mark's
drawing shows anything is seen once (`marks`).
"""

from __future__ import annotations

import io
from collections.abc import Mapping
from dataclasses import replace
from functools import cache

from PIL import Image

from service.render.plates.plate import PictureUse, Plate

TONE = 128
"""Neither ink nor paper; of 255."""
_SIDE_PX = 8
_NAME = "0" * 64
_FORM = b"0.502 g 0 0 1 1 re f"


@cache
def picture() -> bytes:
    """Give the JPEG file that stands for every photo."""
    data = io.BytesIO()
    Image.new("L", (_SIDE_PX, _SIDE_PX), TONE).save(data, "JPEG", quality=95)
    return data.getvalue()


def with_plain_pictures(plate: Plate) -> Plate:
    """Give a plate whose photos are all the one that stands for them."""
    use = PictureUse(_NAME, _SIDE_PX, _SIDE_PX)
    return replace(plate, pictures=(use,) * len(plate.pictures))


def plain_marks(marks: Mapping[str, bytes]) -> dict[str, bytes]:
    """Give a filled square for each mark there is."""
    return dict.fromkeys(marks, _FORM)
