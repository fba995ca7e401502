"""A small picture of a stored photo, as cards show it, for pages."""

from __future__ import annotations

from pathlib import Path

from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.render.pictures.cache import ThumbnailCache
from service.render.pictures.prepare import prepare_photos
from service.render.pictures.thumbnails import Thumbnail


def find_small_photo(folder: Path, sha256: str) -> bytes | None:
    """Give the picture as a JPEG where it was made before; None where it is yet to be made."""
    found = ThumbnailCache(folder).find(sha256)
    return _largest(found.sizes).jpeg if found else None


def make_small_photo(desk: Desk, sha256: str, suffix: str) -> bytes:
    """Make the picture of a photo on the shelf, and keep it for the next reader and for cards.

    Raises:
        NotFoundError: When the photo cannot be shown.
    """
    source = desk.shelf.local_path(sha256, suffix)
    workshop = desk.workshop
    made, _ = prepare_photos(
        {sha256: source}, cache_folder=workshop.cache_folder, workers=workshop.decoders
    )
    if sha256 not in made:
        raise NotFoundError(sha256, what="photo")
    return _largest(made[sha256].sizes).jpeg


def _largest(sizes: tuple[Thumbnail, ...]) -> Thumbnail:
    return max(sizes, key=lambda size: size.width_px)
