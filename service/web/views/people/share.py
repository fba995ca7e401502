"""How others on the network reach the service, and what to do where they do not yet."""

from __future__ import annotations

from fastapi import APIRouter, Request, Response

from service.store.people.role import Role
from service.store.people.users import has_users
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.people.sharing import TheReach
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

COMMAND = "python3 -m service share"


@router.get("/share", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def share(request: Request, counter: TheCounter, reach: TheReach) -> Response:
    """Show the addresses to type and the fingerprint to compare, or the way there."""
    with counter.reading() as connection:
        anybody = has_users(connection)
    values = {"reach": reach, "anybody": anybody, "command": COMMAND}
    return show_page(request, "people/share.html", values)
