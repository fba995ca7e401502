"""The path on which a sheet of somebody's own is drawn before it is printed on."""

from __future__ import annotations

from fastapi import APIRouter

from service.web.stocks import StockDrawing, draw_stock
from service.web.store.cards.wanted import OwnStockBody

router = APIRouter()


@router.post("/api/stocks/preview")
def own_stock(body: OwnStockBody) -> StockDrawing:
    """Give a stock of your own with the place of each position; nothing is kept.

    Measures that contradict each other are refused, and the reply names the measure.
    """
    return draw_stock(body.to_stock())
