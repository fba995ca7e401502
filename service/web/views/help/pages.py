"""The pages of help, in the order of the work."""

from __future__ import annotations

from fastapi import APIRouter, Request, Response

from service.web.access.gate import OPEN, GatedRoute
from service.web.replies.refusals import Refusal, RefusedError
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

PAGES = ("packing", "fixing", "paper", "hazards", "scanning", "words", "keyboard")
"""Each is a template of `templates/web/help`; their titles stand in its `contents.html`."""


@router.get("/help", include_in_schema=False, dependencies=[OPEN])
def help_start(request: Request) -> Response:
    """Show what there is."""
    return show_page(request, "help/start.html", {"pages": PAGES, "open": ""})


@router.get("/help/{name}", include_in_schema=False, dependencies=[OPEN])
def help_page(request: Request, name: str) -> Response:
    """Show a page.

    Raises:
        RefusedError: When there is none of that name.
    """
    if name not in PAGES:
        raise RefusedError(Refusal.NOT_FOUND, "There is no such page of help.")
    return show_page(request, f"help/{name}.html", {"pages": PAGES, "open": name})
