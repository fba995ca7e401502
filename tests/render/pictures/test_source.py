from __future__ import annotations

import hashlib
from dataclasses import replace
from pathlib import Path

import pytest

from service.errors import PictureError
from service.render.pictures.cache import ThumbnailCache, digest_of
from service.render.pictures.source import picture_source, restoring_source
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


@pytest.fixture
def damaged(kept: list[Thumbnails]) -> Thumbnails:
    """Give a photo whose largest size is no longer what was written."""
    photo = kept[0]
    largest = replace(photo.largest, offset_bytes=photo.largest.offset_bytes - 1)
    return replace(photo, sizes=(*photo.sizes[:-1], largest))


def test_a_plain_source_leaves_the_check_to_the_proof(damaged: Thumbnails) -> None:
    """It gives what stands there; the size itself knows that it is damaged."""
    wanted = damaged.largest
    given = picture_source([damaged])(wanted.sha256)
    assert hashlib.sha256(given).hexdigest() != wanted.sha256
    with pytest.raises(PictureError, match="damaged"):
        _ = wanted.jpeg


def test_what_is_damaged_is_asked_of_the_other(damaged: Thumbnails) -> None:
    """A restoring source gives what the other has; the sound size beside it comes as it is."""
    asked: list[str] = []

    def restore(sha256: str) -> bytes:
        asked.append(sha256)
        return b"mended"

    read = restoring_source([damaged], restore)
    assert read(damaged.largest.sha256) == b"mended"
    assert read(damaged.sizes[0].sha256) == damaged.sizes[0].jpeg
    assert asked == [damaged.largest.sha256]


def test_a_file_that_is_gone_is_told(kept: list[Thumbnails]) -> None:
    """Without its file a size is an error that names it."""
    for folder in {Path(str(photo.largest.source)) for photo in kept}:
        folder.unlink()
    with pytest.raises(PictureError, match="cannot be read"):
        picture_source(kept)(kept[0].largest.sha256)
