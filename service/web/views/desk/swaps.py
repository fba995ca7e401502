"""The swap list: what comes off and what goes on, as one walks, on the screen and on paper."""

from __future__ import annotations

import shutil
from itertools import groupby
from typing import Literal

from fastapi import APIRouter, Request, Response

from service.cards.swap_list import SwapRow
from service.keeping.swap_list import gather_swaps, print_swaps
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)
files = APIRouter(route_class=GatedRoute)
"""What pages link to that is no page."""

_PDF = "application/pdf"
MOST_ROWS = 300
"""More than one carries in an hour; the paper has them all."""


@router.get("/print/swap-list", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def swap_list(request: Request, acting: ThePageActing) -> Response:
    """Show the list, old and new side by side."""
    counter = acting.counter
    found = counter.list_reprints()
    listed = gather_swaps(counter.engine, found, stamp=acting.stamp, indoors=True)
    rows = listed.rows[:MOST_ROWS]
    stops = [(stop, list(some)) for stop, some in groupby(rows, _stop)]
    values = {"stops": stops, "rows": len(listed.rows), "more": len(listed.rows) - len(rows)}
    return show_page(request, "print/swaps.html", values)


@files.get("/print/swap-list/{paper}.pdf", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def swap_list_file(acting: ThePageActing, paper: Literal["A4", "Letter"]) -> Response:
    """Give the list as a PDF with boxes to tick; nothing of it is kept."""
    with acting.counter.working() as desk:
        path = print_swaps(desk, stamp=acting.stamp, paper=paper)
        try:
            data = path.read_bytes()
        finally:
            shutil.rmtree(path.parent)
    headers = {"Content-Disposition": 'inline; filename="swap-list.pdf"'}
    return Response(data, media_type=_PDF, headers=headers)


def _stop(row: SwapRow) -> tuple[str, str, str]:
    """Name where one stops: a container, or an object that is packed nowhere; and the place."""
    alone = "" if row.container_number else row.object_number
    return row.container_number, alone, " / ".join(row.location)
