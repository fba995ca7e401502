"""The pictures of a run, read one by one as they are embedded.

Takes the thumbnails in use, gives their JPEG bytes by hash. Only where each lies is held in memory,
never its bytes, so that a run of many photos needs no more than a run of few.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from service.errors import PictureError
from service.render.pictures.thumbnails import Thumbnails

PictureSource = Callable[[str], bytes]
"""Gives the JPEG file that has a SHA-256; raises `KeyError` for one that is not in use."""


def picture_source(
    thumbnails: Iterable[Thumbnails], *, restore: PictureSource | None = None
) -> PictureSource:
    """Give a function that reads a size of these photos by its SHA-256 and checks what it reads.

    What fails its check is asked of `restore`; without it the function raises `PictureError`.
    """
    sizes = {size.sha256: size for photo in thumbnails for size in photo.sizes}

    def read(sha256: str) -> bytes:
        try:
            return sizes[sha256].jpeg
        except PictureError:
            if restore is None:
                raise
            return restore(sha256)

    return read
