"""A sheet of the museum's own: measured, seen as a drawing, then kept."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from fastapi import APIRouter, Depends, Request, Response

from service.errors import StockError
from service.keeping.paper.own_stocks import keep_own_stock
from service.languages.saying import said, say
from service.pipeline.suit import suited_kinds
from service.sheets.own_stock import NEEDED, OPTIONAL, parse_stock
from service.sheets.stock import Stock
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.views.language.telling import say_kinds
from service.web.views.paper.drawing import draw_stock, figure
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, Undo, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

_PAGE = "paper/measure.html"
FIELDS = (*NEEDED, *OPTIONAL)
_LONGEST = 100
_FIELD_OF = {
    "page width": "page",
    "page height": "page",
    "columns x rows": "columns",
    "the last column": "pitch_x",
    "the last row": "pitch_y",
    "file": "name",
}
"""Where a measure that is worked out from others is corrected."""
_LETTERS = {
    "label_width": "a",
    "label_height": "b",
    "pitch_x": "c",
    "pitch_y": "d",
    "left": "e",
    "top": "f",
}
"""The measures as the drawing beside the form calls them."""


async def _sent(request: Request) -> Mapping[str, str]:
    """Read the measures that were typed, from a form or from an address."""
    said = request.query_params if request.method == "GET" else await request.form()
    found = {name: said.get(name, "") for name in FIELDS}
    return {
        name: value.strip()[:_LONGEST]
        for name, value in found.items()
        if isinstance(value, str) and value.strip()
    }


Sent = Annotated[Mapping[str, str], Depends(_sent)]


@router.get("/stocks/measure", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def measure(request: Request, sent: Sent) -> Response:
    """Ask for the measures of a sheet; once they are typed, draw it."""
    if not sent:
        return _show(request, FilledForm(), None)
    try:
        stock = parse_stock(sent)
    except StockError as error:
        return _show(request, FilledForm(sent, tell_measure(error)), None)
    return _show(request, FilledForm(sent), stock)


@router.post("/stocks/keep", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def keep(request: Request, acting: ThePageActing, sent: Sent) -> Response:
    """Keep a sheet that was measured."""
    try:
        stock = keep_own_stock(acting.counter.data_folder, sent)
    except StockError as error:
        return _show(request, FilledForm(sent, tell_measure(error)), None)
    words = say("{name} is kept. Print its test sheet before you use it.", name=stock.name)
    return go_to("/stocks", Notice(words, Undo("/stocks/forget", {"name": stock.name})))


def tell_measure(error: StockError) -> Mapping[str, str]:
    """Say beside the field of a measure what is wrong with it."""
    name = _FIELD_OF.get(error.measure, error.measure.replace(" ", "_"))
    letter = _LETTERS.get(name)
    measure = said(error.measure)
    shown = f"{letter} ({measure})" if letter else measure[:1].upper() + measure[1:]
    return {name: f"{shown} {said(error.reason)}."}


def _show(request: Request, form: FilledForm, stock: Stock | None) -> Response:
    values = {
        "form": form,
        "stock": stock,
        "drawing": figure(draw_stock(stock, px_per_mm=1.2)) if stock else "",
        "kinds": say_kinds(suited_kinds(stock)) if stock else "",
    }
    return show_page(request, _PAGE, values, status=form.status)
