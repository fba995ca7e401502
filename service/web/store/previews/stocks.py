"""The path on which a sheet of somebody's own is drawn before it is printed on."""

from __future__ import annotations

from fastapi import APIRouter

from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.stocks import StockDrawing, draw_stock
from service.web.store.cards.wanted import OwnStockBody

router = APIRouter(route_class=GatedRoute)


@router.post("/api/stocks/preview", dependencies=[needs(Role.VIEW)])
def own_stock(body: OwnStockBody) -> StockDrawing:
    """Give a stock of your own with the place of each position; nothing is kept.

    Measures that contradict each other are refused, and the reply names the measure.
    """
    return draw_stock(body.to_stock())
