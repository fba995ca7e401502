"""The orientation tag 0x0112 against the table of Exif 2.32 (JEITA CP-3451, section 4.6.4).

The table says for each value at which visual side the 0th row and the 0th column of the stored
picture lie. The test picture has a red 0th row and a blue 0th column, so the sides can be looked at
without any turning of our own.
"""

from __future__ import annotations

import io

import pytest
from PIL import Image, ImageStat

from service.render.pictures.photos import open_photo

RED, BLUE, GREY = (200, 20, 20), (20, 20, 200), (120, 120, 120)
LONG_PX, SHORT_PX, BAND_PX = 160, 96, 16

# Value: visual side of the 0th row, visual side of the 0th column.
TABLE = {
    1: ("top", "left"),
    2: ("top", "right"),
    3: ("bottom", "right"),
    4: ("bottom", "left"),
    5: ("left", "top"),
    6: ("right", "top"),
    7: ("right", "bottom"),
    8: ("left", "bottom"),
}


def _stored_picture() -> Image.Image:
    picture = Image.new("RGB", (LONG_PX, SHORT_PX), GREY)
    picture.paste(RED, (0, 0, LONG_PX, BAND_PX))
    picture.paste(BLUE, (0, 0, BAND_PX, SHORT_PX))
    return picture


def _file(kind: str, exif: Image.Exif | bytes) -> bytes:
    target = io.BytesIO()
    _stored_picture().save(target, kind, exif=exif)
    return target.getvalue()


def _side(picture: Image.Image, side: str) -> str:
    """Name the colour in the middle of a side."""
    across, down = picture.width // 2, picture.height // 2
    edge, half = 4, 8
    boxes = {
        "top": (across - half, 0, across + half, edge),
        "bottom": (across - half, picture.height - edge, across + half, picture.height),
        "left": (0, down - half, edge, down + half),
        "right": (picture.width - edge, down - half, picture.width, down + half),
    }
    red, _, blue = ImageStat.Stat(picture.crop(boxes[side])).mean
    return "red" if red > blue + 100 else "blue" if blue > red + 100 else "grey"


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "TIFF", "WEBP", "AVIF"])
@pytest.mark.parametrize("value", TABLE)
def test_every_orientation_comes_out_as_the_table_says(kind: str, value: int) -> None:
    """The 0th row and the 0th column lie at the sides the standard names, in every format."""
    exif = Image.Exif()
    exif[0x0112] = value
    picture = open_photo(_file(kind, exif), name="turned")
    row_side, column_side = TABLE[value]
    assert (_side(picture, row_side), _side(picture, column_side)) == ("red", "blue")
    sides = set(TABLE[1] + ("bottom", "right")) - {row_side, column_side}
    assert {_side(picture, side) for side in sides} == {"grey"}


@pytest.mark.parametrize("value", [0, 9, 255, 65535])
def test_values_outside_the_table_turn_nothing(value: int) -> None:
    """A value the standard does not know leaves the picture as stored."""
    exif = Image.Exif()
    exif[0x0112] = value
    picture = open_photo(_file("JPEG", exif), name="odd")
    assert picture.size == (LONG_PX, SHORT_PX)
    assert _side(picture, "top") == "red"


# A TIFF header (TIFF 6.0, section 2) and one entry for the tag: ASCII text, a fraction whose bytes
# are missing, an entry count the block does not hold, and no header at all.
BROKEN = {
    "text": b"II*\0\x08\0\0\0\x01\0\x12\x01\x02\0\x04\0\0\0abc\0\0\0\0\0",
    "fraction": b"II*\0\x08\0\0\0\x01\0\x12\x01\x05\0\x01\0\0\0\xff\xff\0\0\0\0\0\0",
    "count": b"II*\0\x08\0\0\0\xff\xff\x12\x01\x03\0",
    "header": b"\x01\x02\x03",
}


@pytest.mark.parametrize("block", BROKEN.values(), ids=BROKEN.keys())
def test_broken_metadata_costs_no_picture(block: bytes) -> None:
    """A photo whose Exif block is nonsense opens as stored."""
    picture = open_photo(_file("JPEG", b"Exif\0\0" + block), name="broken")
    assert picture.size == (LONG_PX, SHORT_PX)
