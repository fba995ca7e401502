from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from service.errors import PictureError
from service.render.pictures.cache import ThumbnailCache, digest_of
from service.render.pictures.source import picture_source
from service.render.pictures.thumbnails import Thumbnails, make_thumbnails
from tests.render.pictures.camera import take_photo

PHOTOS = [take_photo((800, 600)), take_photo((900, 600), colour="#203040")]


@pytest.fixture
def kept(tmp_path: Path) -> list[Thumbnails]:
    """Give the thumbnails of two photos as they stand in a folder."""
    cache = ThumbnailCache(tmp_path)
    return [cache.keep(digest_of(data), make_thumbnails(data, name="a")) for data in PHOTOS]


def test_every_size_of_every_photo_is_given(kept: list[Thumbnails]) -> None:
    """The bytes under a hash are those of the size that has it."""
    read = picture_source(kept)
    for photo, data in zip(kept, PHOTOS, strict=True):
        made = make_thumbnails(data, name="a")
        assert [read(size.sha256) for size in photo.sizes] == [size.jpeg for size in made.sizes]


def test_a_photo_not_in_use_is_not_given(kept: list[Thumbnails]) -> None:
    """Only what was handed in can be asked for."""
    with pytest.raises(KeyError):
        picture_source(kept[:1])(kept[1].largest.sha256)


def test_damaged_bytes_are_never_given(kept: list[Thumbnails]) -> None:
    """What is damaged is an error, or what the other source has; the sound size beside it comes."""
    photo = kept[0]
    damaged = replace(photo.largest, offset_bytes=photo.largest.offset_bytes - 1)
    used = [replace(photo, sizes=(*photo.sizes[:-1], damaged))]
    with pytest.raises(PictureError, match="damaged"):
        picture_source(used)(damaged.sha256)
    asked: list[str] = []

    def restore(sha256: str) -> bytes:
        asked.append(sha256)
        return b"mended"

    read = picture_source(used, restore=restore)
    assert read(damaged.sha256) == b"mended"
    assert read(photo.sizes[0].sha256) == photo.sizes[0].jpeg
    assert asked == [damaged.sha256]
