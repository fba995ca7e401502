"""One page with every piece at its worst, to be looked at after each change of the style.

It is there only on the machine that serves it.
"""

from __future__ import annotations

from fastapi import APIRouter, Request, Response

from service.sheets.stocks import STOCKS, find_stock
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.access.porter import porter_of
from service.web.replies.refusals import Refusal, RefusedError
from service.web.views.paper.drawing import draw_stock, figure
from service.web.views.scan.marks import draw_mark
from service.web.views.shell.forms import WHOLE, FilledForm
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

LONG_NUMBER = "PMM.1887/1931.14.2049-1a-zz.OLD.STORE.0001999888777666555"
FIELDS = ("text", "short", "area", "choice", "day", "file")
MARKS = (
    *("toxic", "radiation", "broken-glass", "fragile"),
    *("keep-flat", "do-not-hang", "gloves", "ask-first"),
)


@router.get("/patterns", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def patterns(request: Request) -> Response:
    """Show every piece.

    Raises:
        RefusedError: When it is asked for from another machine.
    """
    if not porter_of(request).is_local:
        raise RefusedError(Refusal.NOT_FOUND, "This page is for whoever works on the service.")
    typed = dict.fromkeys(FIELDS, f"{LONG_NUMBER} \N{ARABIC LETTER MEEM}") | {"day": "2026-11-25"}
    faults = {
        name: f"{name.capitalize()} cannot be kept as it stands: look again." for name in FIELDS
    }
    values = {
        "number": LONG_NUMBER,
        "marks": [(code, draw_mark(code)) for code in MARKS],
        "form": FilledForm(typed, {WHOLE: "Something is wrong with all of it.", **faults}),
        "clean": FilledForm(),
        "drawing": figure(draw_stock(find_stock("A4 5x13 38.1x21.2", STOCKS))),
    }
    return show_page(request, "patterns/page.html", values)
