"""The page of one object: what it is, what can hurt, where it is and where it has been."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated

from fastapi import APIRouter, Path, Request, Response

from service.store.people.role import Role
from service.store.shelf.shown import ShownPhoto
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.views.language.choices import list_sides
from service.web.views.objects.record.values import write_values
from service.web.views.objects.seen import see_object
from service.web.views.shell.addresses import page_with
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.page import show_page
from service.web.views.shell.pictures import LARGE_PX, page_of_picture

router = APIRouter(route_class=GatedRoute)


@dataclass(frozen=True, slots=True)
class ShownLine:
    """A photo on the page: its picture, the page to change it, and what it shows."""

    photo: ShownPhoto
    picture: str
    page: str


@router.get("/objects/{number:path}", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def object_page(
    request: Request, counter: TheCounter, number: Annotated[str, Path(max_length=500)]
) -> Response:
    """Show an object."""
    return show_object(request, counter, number)


def show_object(
    request: Request, counter: Counter, number: str, form: FilledForm | None = None
) -> Response:
    """Show an object, with the form for photos as it was sent where that was wrong."""
    seen = see_object(counter, number)
    filled = form or FilledForm()
    values = {
        "form": filled,
        "seen": seen,
        "record": seen.record,
        "number": number,
        "photos": _lines(number, seen.photos),
        "removed": _lines(number, seen.removed),
        "facts": write_values(seen.record),
        "roles": list_sides(),
        "print": page_with("/print", what="objects", objects=number),
    }
    return show_page(request, "objects/page.html", values, status=filled.status)


def _lines(number: str, shown: Sequence[ShownPhoto]) -> list[ShownLine]:
    return [
        ShownLine(
            one,
            page_of_picture(one.sha256, number, LARGE_PX),
            page_with("/photo", object=number, photo=one.sha256),
        )
        for one in shown
    ]
