from __future__ import annotations

import io
from collections.abc import Iterator
from pathlib import Path

import pytest
from PIL import Image

from service.errors import PictureError
from service.render.pictures.shown.served import (
    WIDTHS_PX,
    choose_width_px,
    find_served,
    make_served,
    measure_photo,
    serve_photo,
)
from service.render.worker import Workers
from tests.render.pictures.camera import TELL_TALE, take_photo
from tests.render.pictures.shown.test_edited import corners


@pytest.fixture(scope="module")
def workers() -> Iterator[Workers]:
    """Start one child process for the tests of this file."""
    with Workers(1) as started:
        yield started


def test_the_next_width_above_is_made() -> None:
    """A browser scales down; what is wider than any is the widest."""
    assert [choose_width_px(one) for one in (1, 160, 161, 5000)] == [160, 160, 320, WIDTHS_PX[-1]]


@pytest.mark.parametrize(
    ("width_px", "size"), [(160, (160, 120)), (640, (640, 480)), (1280, (640, 480))]
)
def test_a_picture_is_never_enlarged_and_tells_nothing(
    width_px: int, size: tuple[int, int]
) -> None:
    """It is a JPEG of the wanted width at most, without place, person or device."""
    jpeg = make_served(take_photo((640, 480)), name="x", width_px=width_px)
    with Image.open(io.BytesIO(jpeg)) as opened:
        assert (opened.format, opened.size, dict(opened.getexif())) == ("JPEG", size, {})
    assert TELL_TALE.encode() not in jpeg


def test_what_was_made_is_kept(tmp_path: Path, workers: Workers) -> None:
    """Also when the photo has gone meanwhile; a photo that cannot be used is told."""
    photo, cache = tmp_path / "x.jpg", tmp_path / "cache"
    photo.write_bytes(corners(orientation=6))
    assert measure_photo(photo, workers=workers) == (200, 400)
    assert find_served(cache, "ab", 160) is None
    made = serve_photo(photo, "ab", 160, cache_folder=cache, workers=workers)
    assert find_served(cache, "ab", 160) == made
    photo.write_bytes(b"no photo")
    for work in (
        lambda: serve_photo(photo, "cd", 160, cache_folder=cache, workers=workers),
        lambda: measure_photo(photo, workers=workers),
    ):
        with pytest.raises(PictureError):
            work()
