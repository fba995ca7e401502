from __future__ import annotations

import io

import pytest
from PIL import Image

from service.records.photos.edit import AS_IT_CAME, PhotoCrop, PhotoEdit
from service.render.pictures.shown.edited import EditedPhoto, decode_edited, digest_of_edited

_ORIENTATION = 0x0112


def corners(*, orientation: int = 1) -> bytes:
    """Give a photo of 400 x 200 with red, green, blue and white in its corners, row by row."""
    picture = Image.new("RGB", (400, 200))
    for at, colour in enumerate(("red", "lime", "blue", "white")):
        picture.paste(colour, (200 * (at % 2), 100 * (at // 2), 200 + 200 * (at % 2), 200))
    exif = Image.Exif()
    exif[_ORIENTATION] = orientation
    target = io.BytesIO()
    picture.save(target, "JPEG", quality=95, exif=exif)
    return target.getvalue()


def seen(image: Image.Image) -> str:
    """Name the colours near the corners, row by row."""
    names = {(255, 0, 0): "r", (0, 255, 0): "g", (0, 0, 255): "b", (255, 255, 255): "w"}
    across, down = image.width - 10, image.height - 10
    spots = ((10, 10), (across, 10), (10, down), (across, down))
    clear = image.point(lambda level: 255 if level > 127 else 0)
    pixels = {spot: clear.getpixel(spot) for spot in spots}
    return "".join(name for spot in spots for of, name in names.items() if pixels[spot] == of)


@pytest.mark.parametrize(
    ("turns", "size", "colours"),
    [
        (0, (400, 200), "rgbw"),
        (1, (200, 400), "brwg"),
        (2, (400, 200), "wbgr"),
        (3, (200, 400), "gwrb"),
    ],
)
def test_a_photo_is_turned_with_the_clock(turns: int, size: tuple[int, int], colours: str) -> None:
    """Quarter turns swap the sides of what is not square."""
    photo = decode_edited(corners(), name="x", edit=PhotoEdit(turns))
    assert (photo.image.size, seen(photo.image)) == (size, colours)
    assert photo.source_long_side_px == 400


def test_a_phone_photo_is_turned_from_upright() -> None:
    """What the phone says of itself comes first: orientation 6 lies a quarter to the left."""
    upright = decode_edited(corners(orientation=6), name="x").image
    assert (upright.size, seen(upright)) == ((200, 400), "brwg")
    turned = decode_edited(corners(orientation=6), name="x", edit=PhotoEdit(1)).image
    assert (turned.size, seen(turned)) == ((400, 200), "wbgr")
    # The left half of the upright photo, blue above white, then turned: white, blue.
    left = PhotoEdit(1, PhotoCrop(0, 0, 0.5, 1))
    part = decode_edited(corners(orientation=6), name="x", edit=left)
    assert (part.image.size, seen(part.image)) == ((400, 100), "wbwb")
    assert part.source_long_side_px == 400


def test_a_crop_keeps_the_pixels_it_is_asked_for() -> None:
    """The whole is decoded so large that the part has them, where the photo does."""
    part = PhotoEdit(0, PhotoCrop(0.5, 0.5, 1, 1))
    photo = decode_edited(corners(), name="x", edit=part, long_side_px=60)
    assert max(photo.image.size) >= 60
    assert (seen(photo.image), photo.source_long_side_px) == ("wwww", 200)


def test_thumbnails_of_an_edit_have_a_hash_of_their_own() -> None:
    """As it came it is that of the bytes, so that what was made before serves."""
    photo = EditedPhoto(b"x", PhotoEdit(1))
    hashes = {digest_of_edited("0" * 64, edit) for edit in (AS_IT_CAME, photo.edit, PhotoEdit(2))}
    assert "0" * 64 in hashes
    assert len(hashes) == 3
    assert {len(one) for one in hashes} == {64}
