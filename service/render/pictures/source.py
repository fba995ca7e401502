"""The pictures of a run, read one by one as they are embedded.

Takes the thumbnails in use, gives their JPEG bytes by hash. Only where each lies is held in memory,
never its bytes, so that a run of many photos needs no more than a run of few.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from service.errors import PictureError
from service.render.pictures.thumbnails import Thumbnail, Thumbnails

PictureSource = Callable[[str], bytes]
"""Gives the JPEG file that has a SHA-256; raises `KeyError` for one that is not in use."""


def picture_source(thumbnails: Iterable[Thumbnails]) -> PictureSource:
    """Give a function that reads a size of these photos by its SHA-256, as it stands.

    What it reads is not checked: the proof of a file hashes every picture that came into it.
    """
    sizes = _by_hash(thumbnails)
    return lambda sha256: sizes[sha256].read()


def restoring_source(thumbnails: Iterable[Thumbnails], restore: PictureSource) -> PictureSource:
    """Give a function that checks what it reads, and asks `restore` for what is damaged."""
    sizes = _by_hash(thumbnails)

    def read(sha256: str) -> bytes:
        try:
            return sizes[sha256].jpeg
        except PictureError:
            return restore(sha256)

    return read


def _by_hash(thumbnails: Iterable[Thumbnails]) -> dict[str, Thumbnail]:
    return {size.sha256: size for photo in thumbnails for size in photo.sizes}
