"""Photos of objects as pages show them."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Path, Response

from service.errors import NotFoundError
from service.keeping.photos.screen import load_screen_photo
from service.store.people.role import Role
from service.store.shelf.photos import find_stored
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter

router = APIRouter(route_class=GatedRoute)

_A_DAY = "private, max-age=86400"


@router.get("/photos/{sha256}", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def photo(sha256: Annotated[str, Path(pattern="^[0-9a-f]{64}$")], counter: TheCounter) -> Response:
    """Give a photo of an object, small, upright and without what cameras write into files.

    Raises:
        NotFoundError: When there is none, or it cannot be used.
    """
    with counter.reading() as connection:
        found = find_stored(connection, sha256)
    if found is None:
        raise NotFoundError(sha256, what="photo")
    jpeg = load_screen_photo(found, counter.thumbnail_folder, counter.working)
    return Response(jpeg, media_type="image/jpeg", headers={"Cache-Control": _A_DAY})
