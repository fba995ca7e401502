"""All objects, in natural order, a page at a time; or those that words find."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from fastapi import APIRouter, Query, Request, Response

from service.records.record import ObjectRecord, PhotoRole
from service.store.handles import Connection
from service.store.kept.outs import load_outs
from service.store.lists.pages import ListedPage, list_objects
from service.store.lists.search import search
from service.store.load_records import load_objects
from service.store.packing.load import load_holders
from service.store.people.role import Role
from service.store.shelf.shown import ShownPhoto, load_shown
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.shell.addresses import page_with
from service.web.views.shell.page import show_page
from service.web.views.shell.pictures import SMALL_PX, page_of_picture

router = APIRouter(route_class=GatedRoute)

_AT_ONCE = 40


@dataclass(frozen=True, slots=True)
class Line:
    """An object in the list: its picture, and the containers in which it lies."""

    object_number: str
    title: str
    picture: str
    containers: tuple[str, ...]
    out_since: datetime | None
    hazards: int


@router.get("/objects", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def objects(
    request: Request,
    counter: TheCounter,
    q: Annotated[str, Query(max_length=500)] = "",
    after: Annotated[str, Query(max_length=2000)] = "",
) -> Response:
    """Show a page of the list, or what the words find."""
    with counter.reading() as connection:
        if q.strip():
            found = search(connection, q, limit=_AT_ONCE)
            numbers = [hit.object_number for hit in found.objects]
            is_cut, older = found.more, ""
        else:
            page = list_objects(connection, limit=_AT_ONCE, cursor=after)
            numbers = _numbers(page)
            is_cut = False
            older = page.next_cursor and page_with("/objects", after=page.next_cursor)
        lines = _lines(connection, numbers)
    values = {"lines": lines, "q": q, "is_first": not after, "next": older, "is_cut": is_cut}
    return show_page(request, "objects/list.html", values)


def choose_shown(shown: Sequence[ShownPhoto]) -> ShownPhoto | None:
    """Choose the photo that stands for an object: the first of its front, else the first."""
    kept = [one for one in shown if not one.is_removed]
    front = (one for one in kept if one.role is PhotoRole.FRONT)
    return next(front, next(iter(kept), None))


def _numbers(page: ListedPage[ObjectRecord]) -> list[str]:
    return [record.object_number for record in page.records]


def _lines(connection: Connection, numbers: Sequence[str]) -> list[Line]:
    records = {one.object_number: one for one in load_objects(connection, numbers)}
    shown = load_shown(connection, numbers)
    lying: dict[str, dict[str, None]] = {}
    for container, places in load_holders(connection, numbers).items():
        for place in places:
            lying.setdefault(place.object_number, {})[container] = None
    out = {one.slip.object_number: one.stamp.at for one in load_outs(connection)}
    return [
        Line(
            number,
            records[number].title,
            page_of_picture(front.sha256, number, SMALL_PX)
            if (front := choose_shown(shown.get(number, ())))
            else "",
            tuple(lying.get(number, ())),
            out.get(number),
            len(records[number].hazards),
        )
        for number in numbers
    ]
