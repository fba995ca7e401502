"""All kinds of sheets, drawn, with what each is for."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Annotated

from fastapi import APIRouter, Form, Request, Response
from markupsafe import Markup

from service.keeping.paper.own_stocks import forget_own_stock, load_own_stocks
from service.languages.saying import say
from service.pipeline.suit import suited_kinds
from service.sheets.stock import Medium, Stock
from service.sheets.stocks import STOCKS
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.language.telling import say_kinds
from service.web.views.paper.drawing import draw_stock, figure
from service.web.views.shell.notice import Notice, Undo, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

GROUPS = ("own", "a4-labels", "a4-cards", "letter-labels", "letter-cards", "rolls")


@dataclass(frozen=True, slots=True)
class Tile:
    """A stock in the list: drawn, with its size in words and the kinds of card it suits."""

    stock: Stock
    drawing: Markup
    kinds: str


@router.get("/stocks", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def stocks(request: Request, counter: TheCounter) -> Response:
    """Show every stock."""
    own = load_own_stocks(counter.data_folder)
    groups: dict[str, list[Tile]] = {name: [] for name in GROUPS}
    groups["own"] = list(_tiles(own))
    for tile in _tiles(STOCKS):
        groups[group_of(tile.stock)].append(tile)
    return show_page(request, "paper/stocks.html", {"groups": groups})


@router.post("/stocks/forget", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def forget(acting: ThePageActing, name: Annotated[str, Form(max_length=200)]) -> Response:
    """Forget a stock of the museum's own."""
    gone = forget_own_stock(acting.counter.data_folder, name)
    fields = {key: str(value) for key, value in gone.items()}
    return go_to(
        "/stocks", Notice(say("{name} is forgotten.", name=name), Undo("/stocks/keep", fields))
    )


def group_of(stock: Stock) -> str:
    """Say under which heading a listed stock stands."""
    if stock.name.startswith("Roll"):
        return "rolls"
    paper = "letter" if stock.name.startswith("Letter") else "a4"
    return f"{paper}-{'labels' if stock.medium is Medium.STICKY else 'cards'}"


def _tiles(some: Iterable[Stock]) -> Iterable[Tile]:
    return (Tile(one, figure(draw_stock(one)), say_kinds(suited_kinds(one))) for one in some)
