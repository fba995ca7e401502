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
    LEAST_PX,
    Grade,
    Thumbnail,
    Thumbnails,
    choose_thumbnail,
    halve,
    is_finer_needed,
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


@pytest.mark.parametrize("grade", Grade)
def test_each_size_is_half_of_the_one_above(grade: Grade) -> None:
    """The largest has what the grade asks for, and halving ends short of a picture of 16 mm."""
    photo = take_photo((1600, 1200), object_ratio=0.8)
    sides = _sides(make_thumbnails(photo, name="a.jpg", grade=grade))
    assert sides[:-1] == [math.ceil(side / 2) for side in sides[1:]]
    assert sides[-1] >= grade.value
    assert LEAST_PX <= sides[0] < 2 * LEAST_PX


def test_a_small_photo_is_never_enlarged() -> None:
    """A photo below the ladder gives one size, its own."""
    (size,) = make_thumbnails(take_photo((200, 150), object_ratio=1.0), name="a.jpg").sizes
    assert (size.width_px, size.height_px) == (200, 150)


@pytest.mark.slow
@pytest.mark.parametrize(
    ("grade", "object_ratio", "most_px"),
    [(Grade.SMALL, 0.3, 700), (Grade.LARGE, 0.3, 1380), (Grade.LARGE, 0.2, 1200)],
)
def test_a_small_object_in_a_large_photo_is_looked_at_again(
    grade: Grade, object_ratio: float, most_px: float
) -> None:
    """A small object comes as fine as the grade asks or the file allows, not as first seen."""
    photo = take_photo((4000, 3000), object_ratio=object_ratio)
    width_px = make_thumbnails(photo, name="a.jpg", grade=grade).largest.width_px
    assert min(grade.value, 4000 * object_ratio * 1.08) <= width_px <= most_px


@pytest.mark.slow
@pytest.mark.parametrize("size", [(4000, 3000), (2900, 2900), (5000, 1000)], ids=str)
@pytest.mark.parametrize("grade", Grade)
@pytest.mark.parametrize("form", ["JPEG", "PNG"])
def test_no_size_is_far_above_the_grade(size: tuple[int, int], grade: Grade, form: str) -> None:
    """A photo far larger than any card is brought down, whatever its decoder can do."""
    target = io.BytesIO()
    Image.linear_gradient("L").resize(size).save(target, form)
    sides = _sides(make_thumbnails(target.getvalue(), name="a", grade=grade))
    assert grade.value <= sides[-1] <= 2.5 * grade.value


@pytest.mark.slow
@pytest.mark.parametrize("long_side_px", [746, 1992])
def test_the_short_way_of_decoding_costs_no_visible_quality(long_side_px: int) -> None:
    """Each size is within 45 dB of the photo decoded whole and brought there by one filter."""
    data = take_photo((4096, 3072))
    whole = open_photo(data, name="a")
    short = open_photo(data, name="a", long_side_px=long_side_px)
    bands = short.convert("YCbCr").split()
    while bands[0].width > LEAST_PX:
        reference = whole.resize(bands[0].size, Image.Resampling.LANCZOS).convert("YCbCr")
        assert _noise_ratio_db(reference, Image.merge("YCbCr", bands)) >= 45
        bands = halve(bands)
    assert bands[0].width == 128


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


@pytest.mark.parametrize(
    ("grade", "side_mm", "expected"),
    [(Grade.SMALL, 54.1, False), (Grade.SMALL, 54.4, True), (Grade.LARGE, 200, False)],
)
def test_a_finer_photo_is_asked_for_once(grade: Grade, side_mm: float, *, expected: bool) -> None:
    """640 pixels are 54.2 mm at 300 dpi; a photo of the large grade is as fine as it gets."""
    photo = replace(_sized(240, 400, 640), grade=grade)
    assert is_finer_needed(photo, side_mm, side_mm) is expected


def test_a_size_is_found_by_its_hash() -> None:
    """Each size is found, and nothing else."""
    photo = make_thumbnails(take_photo((800, 600)), name="a.jpg")
    assert [photo.find(size.sha256) for size in photo.sizes] == list(photo.sizes)
    assert photo.find("0" * 64) is None


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
