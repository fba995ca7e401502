"""One photo of an object: looked at closely, and shown otherwise."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Query, Request, Response

from service.store.people.role import Role
from service.store.shelf.shown import find_shown, load_shown_of
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.views.language.choices import list_sides
from service.web.views.objects.photos.cuts import write_cuts
from service.web.views.shell.addresses import page_with
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.page import show_page
from service.web.views.shell.pictures import LARGE_PX, WHOLE_PX, page_of_picture, page_of_whole

router = APIRouter(route_class=GatedRoute)


@router.get("/photo", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def photo(
    request: Request,
    counter: TheCounter,
    number: Annotated[str, Query(alias="object", max_length=500)] = "",
    sha256: Annotated[str, Query(alias="photo", max_length=64)] = "",
) -> Response:
    """Show a photo as its object shows it, and whole."""
    return show_photo_page(request, counter, number, sha256)


def page_of_shown(object_number: str, sha256: str) -> str:
    """Give the page of a photo of an object."""
    return page_with("/photo", object=object_number, photo=sha256)


def show_photo_page(
    request: Request,
    counter: Counter,
    number: str,
    sha256: str,
    form: FilledForm | None = None,
) -> Response:
    """Show a photo, with the form as it was sent where something was wrong with it.

    Raises:
        NotFoundError: When there is no such object, or it has no such photo.
    """
    with counter.reading() as connection:
        shown = find_shown(connection, number, sha256)
        all_of_it = [one.sha256 for one in load_shown_of(connection, number) if not one.is_removed]
    filled = form or FilledForm(write_cuts(shown.edit.crop))
    values = {
        "form": filled,
        "number": number,
        "shown": shown,
        "picture": page_of_picture(sha256, number, LARGE_PX),
        "whole": page_of_whole(sha256, WHOLE_PX),
        "at": all_of_it.index(sha256) if sha256 in all_of_it else -1,
        "of": len(all_of_it),
        "turns": [(shown.edit.turns + 1) % 4, (shown.edit.turns + 3) % 4],
        "roles": list_sides(),
    }
    return show_page(request, "objects/photo.html", values, status=filled.status)
