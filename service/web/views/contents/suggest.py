"""Numbers that may be meant, while they are typed; without a script the same as a page."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Query, Request, Response

from service.store.lists.suggest import suggest_containers, suggest_objects
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

CONTAINERS = "containers"


@router.get("/suggest", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def suggest(
    request: Request,
    counter: TheCounter,
    q: Annotated[str, Query(max_length=500)] = "",
    of: Annotated[str, Query(max_length=20)] = "objects",
) -> Response:
    """List a few objects, or containers, whose number or words begin so."""
    search = suggest_containers if of == CONTAINERS else suggest_objects
    with counter.reading() as connection:
        found = search(connection, q, limit=12)
    values = {"found": found, "of": of, "q": q}
    return show_page(request, "contents/suggest.html", values)
