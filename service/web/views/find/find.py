"""Finds objects and containers by what people remember of them."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Query, Request, Response
from fastapi.responses import RedirectResponse

from service.store.handles import Connection
from service.store.lists.search import Found, ObjectHit, search
from service.store.load_records import load_containers, load_objects
from service.store.packing.load import find_object
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.records.finding import find_places
from service.web.views.shell.addresses import page_of_container
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

_MOST = 50


@router.get("/find", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def find(
    request: Request, counter: TheCounter, q: Annotated[str, Query(max_length=500)] = ""
) -> Response:
    """Answer where something is; the number of a container leads right to it."""
    typed = " ".join(q.split())
    with counter.reading() as connection:
        if typed and load_containers(connection, [typed]) and not _is_object(connection, typed):
            return RedirectResponse(page_of_container(typed), status_code=303)
        found = search(connection, typed, limit=_MOST) if typed else Found((), ())
        one = _single(connection, typed, found)
        places = find_places(connection, one) if one else []
        title = next((each.title for each in load_objects(connection, [one])), "") if one else ""
    values = {
        "q": typed,
        "found": found,
        "one": one,
        "title": title,
        "places": places,
        "out": _out_of(found, one),
    }
    return show_page(request, "find/find.html", values)


def _is_object(connection: Connection, number: str) -> bool:
    """Tell whether an object has this number, or one packed that is in no record."""
    return bool(load_objects(connection, [number]) or find_object(connection, number))


def _single(connection: Connection, typed: str, found: Found) -> str:
    """Give the number of the one object that is meant: exactly typed, or the only hit."""
    if typed and _is_object(connection, typed):
        return typed
    if len(found.objects) == 1 and not found.containers:
        return found.objects[0].object_number
    return ""


def _out_of(found: Found, number: str) -> ObjectHit | None:
    hits = (hit for hit in found.objects if hit.object_number == number and hit.out_since)
    return next(hits, None)
