"""Photos made for tests, as a camera would write them."""

from __future__ import annotations

import io

from PIL import Image, ImageChops, ImageDraw

TELL_TALE = "Telltale"


def take_photo(
    size: tuple[int, int], *, object_ratio: float = 0.6, colour: str = "#6e3c1e"
) -> bytes:
    """Give a JPEG of a round object on grey card that tells where and by whom it was taken.

    `object_ratio` is the object's share of the width and of the height.
    """
    picture = Image.new("RGB", size, (128, 128, 128))
    left, top = (round(side * (1 - object_ratio) / 2) for side in size)
    ImageDraw.Draw(picture).ellipse((left, top, size[0] - left - 1, size[1] - top - 1), fill=colour)
    grain = Image.linear_gradient("L").resize(size).point(lambda level: level // 12)
    picture = ImageChops.subtract(picture, Image.merge("RGB", (grain, grain, grain)))
    exif = Image.Exif()
    exif[0x010F] = TELL_TALE
    place = exif.get_ifd(0x8825)
    place[1], place[2], place[3], place[4] = "N", (52.0, 30.0, 15.0), "W", (4.0, 10.0, 20.0)
    target = io.BytesIO()
    xmp = f"<x>{TELL_TALE}</x>".encode()
    picture.save(target, "JPEG", quality=92, exif=exif, xmp=xmp, comment=TELL_TALE)
    return target.getvalue()
