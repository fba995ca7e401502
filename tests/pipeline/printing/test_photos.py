"""Tests for photos as fine as the pages show them."""

from __future__ import annotations

import hashlib
import io
from pathlib import Path

import pytest
from PIL import Image

from service.geometry import Rect, Size
from service.pages.page import Page, PictureBlock
from service.pipeline.printing.photos import Photos
from service.pipeline.ready import Workshop
from service.render.pictures.prepare import prepare_photos
from service.render.pictures.thumbnails import Grade, choose_thumbnail

NAME = "chart.jpg"


@pytest.fixture
def source(tmp_path: Path) -> Path:
    """Draw a photo of 2400 pixels that fills its frame."""
    image = Image.linear_gradient("L").resize((2400, 1600)).convert("RGB")
    path = tmp_path / NAME
    image.save(path, "JPEG")
    return path


@pytest.fixture
def photos(source: Path, workshop: Workshop) -> Photos:
    """Give the photo as it is when it has just arrived."""
    ready, _ = prepare_photos(
        {NAME: source}, cache_folder=workshop.cache_folder, workers=workshop.decoders
    )
    return Photos(ready, {NAME: source}, workshop)


def page(side_mm: float) -> Page:
    """Make a page that shows the photo in a square."""
    block = PictureBlock("photo", Rect(5, 5, side_mm, side_mm), NAME, "a chart")
    return Page("cover-card", "G-1", "Chart", 1, 1, Size(210, 148), (block,))


def test_a_small_frame_is_served_by_what_there_is(photos: Photos) -> None:
    """A photo shown 30 mm wide stays as it was made on arrival."""
    before = photos.thumbnails[NAME]
    photos.refine_for([page(30)])
    assert photos.thumbnails[NAME] is before


def test_a_large_frame_gets_300_dots_an_inch(photos: Photos) -> None:
    """A photo shown 95 mm wide is made again so that it has 1122 pixels or more."""
    photos.refine_for([page(95)])
    finer = photos.thumbnails[NAME]
    assert finer.grade is Grade.LARGE
    assert choose_thumbnail(finer, 95, 95).width_px >= 95 / 25.4 * 300


def test_a_photo_that_has_gone_keeps_what_it_had(photos: Photos, source: Path) -> None:
    """Where the file was taken away meanwhile, the coarse picture is printed."""
    source.unlink()
    before = photos.thumbnails[NAME]
    photos.refine_for([page(95)])
    assert photos.thumbnails[NAME] is before


def test_bytes_are_those_of_their_hash(photos: Photos) -> None:
    """The composer gets the JPEG whose SHA-256 it asks for."""
    for size in photos.thumbnails[NAME].sizes:
        jpeg = photos.pictures()(size.sha256)
        assert hashlib.sha256(jpeg).hexdigest() == size.sha256
        assert Image.open(io.BytesIO(jpeg)).size == (size.width_px, size.height_px)


def test_what_a_card_was_inked_with_stays(photos: Photos) -> None:
    """A card that showed it small names the coarse picture after another showed it large."""
    coarse = photos.thumbnails[NAME].sizes[0]
    photos.refine_for([page(95)])
    finer = photos.thumbnails[NAME].largest
    for read in (photos.pictures(), photos.restored_pictures()):
        for size in (coarse, finer):
            assert hashlib.sha256(read(size.sha256)).hexdigest() == size.sha256
    stored = Path(str(coarse.source))
    stored.write_bytes(b"damaged")
    assert hashlib.sha256(photos.restored_pictures()(coarse.sha256)).hexdigest() == coarse.sha256


def test_a_damaged_thumbnail_is_made_again(photos: Photos, workshop: Workshop) -> None:
    """What does not have its hash any more is decoded once more from the photo."""
    wanted = photos.thumbnails[NAME].sizes[0]
    stored = Path(str(wanted.source))
    damaged = bytearray(stored.read_bytes())
    damaged[wanted.offset_bytes + wanted.size_bytes // 2] ^= 0xFF
    stored.write_bytes(damaged)
    assert hashlib.sha256(photos.pictures()(wanted.sha256)).hexdigest() != wanted.sha256
    jpeg = photos.restored_pictures()(wanted.sha256)
    assert hashlib.sha256(jpeg).hexdigest() == wanted.sha256
    assert workshop.cache_folder in stored.parents
