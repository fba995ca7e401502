"""All imports, the latest first, and whether each was taken back."""

from __future__ import annotations

from fastapi import APIRouter, Request, Response

from service.store.kept.imports import list_imports
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.views.intake.done import KINDS
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)


@router.get("/imports", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def imports(request: Request, counter: TheCounter) -> Response:
    """Show the list."""
    return show_imports(request, counter)


def show_imports(request: Request, counter: Counter) -> Response:
    """Show which imports there are."""
    with counter.reading() as connection:
        found = list_imports(connection)
    return show_page(request, "intake/list.html", {"imports": found, "kinds": KINDS})
