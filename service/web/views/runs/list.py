"""All print runs, the latest first."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Query, Request, Response

from service.store.people.role import Role
from service.store.printed.runs import list_runs
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.paging import read_count
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

_AT_ONCE = 40


@router.get("/runs", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def runs(
    request: Request, counter: TheCounter, after: Annotated[str, Query(max_length=20)] = ""
) -> Response:
    """Show a page of the list."""
    before = read_count(after)
    with counter.reading() as connection:
        found = list_runs(connection, limit=_AT_ONCE + 1, before=before)
    shown = found[:_AT_ONCE]
    older = shown[-1].run_id if len(found) > len(shown) else 0
    return show_page(request, "runs/list.html", {"runs": shown, "older": older})
