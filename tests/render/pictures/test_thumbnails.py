from __future__ import annotations

import hashlib
import io
import math
import struct
from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image, ImageChops, ImageStat

from service.errors import PictureError
from service.render.pictures.photos import open_photo
from service.render.pictures.thumbnails import (
    LADDER_PX,
    Thumbnail,
    Thumbnails,
    choose_thumbnail,
    make_thumbnails,
)
from tests.render.pictures.camera import TELL_TALE, take_photo

# Marker codes of ITU-T T.81, table B.1: JFIF head, tables, baseline frame, scan.
APP0, DQT, DHT, SOF0, SOS = 0xE0, 0xDB, 0xC4, 0xC0, 0xDA


def _segments(jpeg: bytes) -> dict[int, bytes]:
    """Give the segments of a JPEG up to the scan, by marker."""
    found: dict[int, bytes] = {}
    place = 2
    while SOS not in found:
        _, marker, length = struct.unpack(">BBH", jpeg[place : place + 4])
        found[marker] = jpeg[place + 4 : place + 2 + length]
        place += 2 + length
    return found


def _open(thumbnail: Thumbnail) -> Image.Image:
    return Image.open(io.BytesIO(thumbnail.jpeg))


def _sides(thumbnails: Thumbnails) -> list[int]:
    return [max(size.width_px, size.height_px) for size in thumbnails.sizes]


def _sized(*long_sides_px: int) -> Thumbnails:
    """Make thumbnails of 3:2 that are all size and no picture."""
    return Thumbnails(tuple(Thumbnail(side, side * 2 // 3, "", 0, b"") for side in long_sides_px))


def _noise_ratio_db(first: Image.Image, second: Image.Image) -> float:
    """Give the peak signal-to-noise ratio of two pictures of one size."""
    squares = ImageStat.Stat(ImageChops.difference(first, second)).sum2
    return 10 * math.log10(255**2 * first.width * first.height * 3 / max(1.0, sum(squares)))


def test_sizes_climb_the_ladder_up_to_the_object() -> None:
    """The sizes are those of the ladder below the object's own, which comes last."""
    sides = _sides(make_thumbnails(take_photo((1600, 1200), object_ratio=0.8), name="a.jpg"))
    assert sides[:-1] == [240, 400, 640, 960]
    assert 1600 * 0.8 * 1.08 <= sides[-1] <= 1600 * 0.8 * 1.15


def test_a_small_photo_is_never_enlarged() -> None:
    """A photo below the ladder gives one size, its own."""
    (size,) = make_thumbnails(take_photo((200, 150), object_ratio=1.0), name="a.jpg").sizes
    assert (size.width_px, size.height_px) == (200, 150)


@pytest.mark.slow
def test_a_small_object_in_a_large_photo_is_looked_at_again() -> None:
    """An object of a third of the picture comes as fine as the file allows, not as first seen."""
    thumbnails = make_thumbnails(take_photo((4000, 3000), object_ratio=0.3), name="a.jpg")
    assert 4000 * 0.3 * 1.08 <= thumbnails.largest.width_px <= 4000 * 0.3 * 1.15


@pytest.mark.slow
def test_no_size_is_above_the_ladder() -> None:
    """A photo far larger than any card ends at the top of the ladder."""
    thumbnails = make_thumbnails(take_photo((4000, 3000), object_ratio=1.0), name="a.jpg")
    assert _sides(thumbnails) == list(LADDER_PX)


@pytest.mark.slow
def test_the_short_way_of_decoding_costs_no_visible_quality() -> None:
    """A picture shrunk while it is decoded is within 45 dB of one decoded whole."""
    data = take_photo((4000, 3000))
    size = (640, 480)
    whole = open_photo(data, name="a").resize(size, Image.Resampling.LANCZOS)
    short = open_photo(data, name="a", long_side_px=2000).resize(size, Image.Resampling.LANCZOS)
    assert _noise_ratio_db(whole, short) >= 45


def test_all_sizes_have_one_shape() -> None:
    """Height over width is the same in every size to the pixel."""
    thumbnails = make_thumbnails(take_photo((900, 1400)), name="a.jpg")
    shape_ratio = thumbnails.largest.width_px / thumbnails.largest.height_px
    for size in thumbnails.sizes:
        assert size.width_px == pytest.approx(size.height_px * shape_ratio, abs=1)
        assert _open(size).size == (size.width_px, size.height_px)


def test_the_same_photo_gives_the_same_bytes() -> None:
    """Two makings agree to the byte, and each size knows its hash and length."""
    data = take_photo((800, 600))
    first, second = make_thumbnails(data, name="a.jpg"), make_thumbnails(data, name="b.jpg")
    assert first == second
    for size in first.sizes:
        assert size.sha256 == hashlib.sha256(size.jpeg).hexdigest()
        assert size.size_bytes == len(size.jpeg)


def test_nothing_but_the_picture_leaves() -> None:
    """A thumbnail is a baseline JPEG of 4:2:0 (ITU-T T.81, B.2.2) without a word beside it."""
    data = take_photo((800, 600))
    assert TELL_TALE.encode() in data
    for size in make_thumbnails(data, name="a.jpg").sizes:
        segments = _segments(size.jpeg)
        assert set(segments) == {APP0, DQT, DHT, SOF0, SOS}
        assert [segments[SOF0][place] for place in (7, 10, 13)] == [0x22, 0x11, 0x11]
        assert TELL_TALE.encode() not in size.jpeg
        assert not dict(_open(size).getexif())


def test_contrast_is_kept_within_reason() -> None:
    """A dull photo is stretched by less than half, and hues stay."""
    dull = Image.linear_gradient("L").point(lambda level: 100 + level * 60 // 255)
    target = io.BytesIO()
    Image.merge("RGB", (dull, dull, dull)).save(target, "PNG")
    stretched = _open(make_thumbnails(target.getvalue(), name="a.png").largest).convert("L")
    before, after = ImageStat.Stat(dull).stddev[0], ImageStat.Stat(stretched).stddev[0]
    assert 1.1 * before < after < 1.5 * before


def test_sharpening_is_gentle() -> None:
    """A step from grey to light overshoots by a few levels and by no more."""
    picture = Image.new("RGB", (400, 100), (90, 90, 90))
    for left in range(40, 400, 80):
        picture.paste((160, 160, 160), (left, 0, left + 40, 100))
    target = io.BytesIO()
    picture.save(target, "PNG")
    largest = _open(make_thumbnails(target.getvalue(), name="a.png").largest).convert("L")
    darkest, lightest = ImageStat.Stat(largest).extrema[0]
    flats = [ImageStat.Stat(largest.crop((x, 20, x + 20, 80))).mean[0] for x in (10, 50)]
    assert 3 <= flats[0] - darkest <= 30
    assert 3 <= lightest - flats[1] <= 30


@pytest.mark.parametrize(
    ("width_mm", "height_mm", "resolution_dpi", "chosen_px"),
    [
        (25.4, 25.4, 300, 400),
        (20.32, 90, 300, 240),
        (20.4, 90, 300, 400),
        (90, 13.5, 300, 240),
        (38, 38, 300, 640),
        (38, 38, 203, 400),
        (200, 200, 300, 1400),
    ],
)
def test_the_smallest_sharp_size_is_chosen(
    width_mm: float, height_mm: float, resolution_dpi: float, chosen_px: int
) -> None:
    """The picture is fitted whole into the space: 25.4 mm at 300 dpi are 300 pixels, and so on."""
    thumbnails = _sized(240, 400, 640, 960, 1400)
    chosen = choose_thumbnail(thumbnails, width_mm, height_mm, resolution_dpi)
    assert chosen.width_px == chosen_px


def test_stored_bytes_are_checked_as_they_are_read(tmp_path: Path) -> None:
    """A stored thumbnail reads back whole, and damaged or lost is an error that names it."""
    size = make_thumbnails(take_photo((300, 200)), name="a.jpg").largest
    path = tmp_path / "kept"
    path.write_bytes(b"head" + size.jpeg + b"tail")
    stored = replace(size, source=path, offset_bytes=4)
    assert stored.jpeg == size.jpeg
    path.write_bytes(b"head" + size.jpeg[::-1])
    with pytest.raises(PictureError, match="kept: the stored thumbnail is damaged"):
        _ = stored.jpeg
    path.unlink()
    with pytest.raises(PictureError, match="cannot be read"):
        _ = stored.jpeg


def test_a_photo_that_cannot_be_used_is_named() -> None:
    """The error names the photo as the record does."""
    with pytest.raises(PictureError, match=r"hat\.jpg"):
        make_thumbnails(b"no photo", name="hat.jpg")
