"""Paths of the museum's own stocks: kept by their measures, found by their names."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Path
from pydantic import BaseModel

from service.keeping.paper.own_stocks import forget_own_stock, keep_own_stock, load_own_stocks
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.stocks import StockView, view_stock
from service.web.store.asking import TheCounter
from service.web.store.cards.wanted import OwnStockBody

router = APIRouter(route_class=GatedRoute)


class OwnStocksView(BaseModel):
    """The museum's own stocks, in the order of names."""

    stocks: list[StockView]


@router.get("/api/own-stocks", dependencies=[needs(Role.VIEW)])
def own_stocks(counter: TheCounter) -> OwnStocksView:
    """List the stocks that the museum measured itself."""
    return OwnStocksView(stocks=[view_stock(one) for one in load_own_stocks(counter.data_folder)])


@router.post("/api/own-stocks", status_code=201, dependencies=[needs(Role.MANAGE)])
def keep(body: OwnStockBody, counter: TheCounter) -> StockView:
    """Keep a stock in place of the one of its name."""
    return view_stock(keep_own_stock(counter.data_folder, body.model_dump(exclude_none=True)))


@router.delete("/api/own-stocks/{name:path}", dependencies=[needs(Role.MANAGE)])
def forget(
    counter: TheCounter, name: Annotated[str, Path(max_length=200, examples=["Our sheet"])]
) -> OwnStocksView:
    """Forget a stock, and list those that are left."""
    forget_own_stock(counter.data_folder, name)
    return own_stocks(counter)
