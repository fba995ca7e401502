"""Paths of the museum's own stocks: kept by their measures, found by their names."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Path
from pydantic import BaseModel

from service.keeping.paper.own_stocks import forget_own_stock, keep_own_stock, load_own_stocks
from service.sheets.stock import Stock
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.cards.wanted import OwnStockBody

router = APIRouter(route_class=GatedRoute)


class OwnStockView(BaseModel):
    """A stock as its measures were understood, in millimetres."""

    name: str
    medium: str
    positions: int
    columns: int
    rows: int
    page_mm: tuple[float, float]
    position_mm: tuple[float, float]


class OwnStocksView(BaseModel):
    """The museum's own stocks, in the order of names."""

    stocks: list[OwnStockView]


@router.get("/api/own-stocks", dependencies=[needs(Role.VIEW)])
def own_stocks(counter: TheCounter) -> OwnStocksView:
    """List the stocks that the museum measured itself."""
    return OwnStocksView(stocks=[_show(one) for one in load_own_stocks(counter.data_folder)])


@router.post("/api/own-stocks", status_code=201, dependencies=[needs(Role.MANAGE)])
def keep(body: OwnStockBody, counter: TheCounter) -> OwnStockView:
    """Keep a stock in place of the one of its name."""
    return _show(keep_own_stock(counter.data_folder, body.model_dump(exclude_none=True)))


@router.delete("/api/own-stocks/{name:path}", dependencies=[needs(Role.MANAGE)])
def forget(
    counter: TheCounter, name: Annotated[str, Path(max_length=200, examples=["Our sheet"])]
) -> OwnStocksView:
    """Forget a stock, and list those that are left."""
    forget_own_stock(counter.data_folder, name)
    return own_stocks(counter)


def _show(stock: Stock) -> OwnStockView:
    return OwnStockView(
        name=stock.name,
        medium=stock.medium.value,
        positions=stock.positions,
        columns=stock.columns,
        rows=stock.rows,
        page_mm=(stock.page.width_mm, stock.page.height_mm),
        position_mm=(stock.label.width_mm, stock.label.height_mm),
    )
