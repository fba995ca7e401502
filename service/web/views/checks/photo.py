"""The small pictures that pages of the round show; an address names the content."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Path, Response

from service.errors import NotFoundError
from service.keeping.photos.small import find_small_photo, make_small_photo
from service.store.shelf.photos import load_file_names
from service.web.store.asking import TheCounter

router = APIRouter()

_SHOWN_FOR_A_DAY = "private, max-age=86400, immutable"


@router.get("/checks/photo/{sha256}", include_in_schema=False)
def photo(counter: TheCounter, sha256: Annotated[str, Path(pattern="^[0-9a-f]{64}$")]) -> Response:
    """Give a picture.

    Raises:
        NotFoundError: When the store names no such photo, or it cannot be shown.
    """
    with counter.reading() as connection:
        stored = load_file_names(connection).get(sha256)
    if stored is None:
        raise NotFoundError(sha256, what="photo")
    jpeg = find_small_photo(counter.thumbnail_folder, sha256)
    if jpeg is None:
        with counter.working() as desk:
            jpeg = make_small_photo(desk, sha256, stored.suffix)
    return Response(jpeg, media_type="image/jpeg", headers={"Cache-Control": _SHOWN_FOR_A_DAY})
