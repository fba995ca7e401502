"""The first page."""

from __future__ import annotations

from fastapi import APIRouter, Request, Response

from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.shell.page import show_page
from service.web.views.start.today import gather_today

router = APIRouter(route_class=GatedRoute)


@router.get("/", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def start(request: Request, counter: TheCounter) -> Response:
    """Show what needs doing today; an empty store shows how to begin."""
    day = counter.now().date()
    today = gather_today(counter, day)
    if today.is_empty:
        return show_page(request, "start/empty.html", {})
    return show_page(request, "start/today.html", {"today": today, "day": day})
