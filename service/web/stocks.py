"""Paths of stocks: the list, and the geometry of one as plain data, to be drawn by whoever asks."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Path
from pydantic import BaseModel

from service.sheets.stock import Stock
from service.sheets.stocks import STOCKS, find_stock
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs

router = APIRouter(route_class=GatedRoute)


class StockView(BaseModel):
    """A kind of sheet, in millimetres; positions are counted from the top left corner."""

    name: str
    medium: str
    positions: int
    columns: int
    rows: int
    page_mm: tuple[float, float]
    position_mm: tuple[float, float]


class PositionRect(BaseModel):
    """Where a position lies, in millimetres from the top left corner of the page, y down."""

    position: int
    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float


class StockDrawing(StockView):
    """A kind of sheet with every position, the radius of its corners, and what stays white."""

    radius_mm: float
    edge_mm: float
    rects: list[PositionRect]


@router.get("/api/stocks", dependencies=[needs(Role.VIEW)])
def stocks() -> list[StockView]:
    """List the stocks that can be printed on."""
    return [view_stock(stock) for stock in STOCKS]


@router.get("/api/stocks/{name}", dependencies=[needs(Role.VIEW)])
def stock_by_name(
    name: Annotated[str, Path(max_length=200, examples=["A4 2x4 99.1x67.7"])],
) -> StockDrawing:
    """Give a stock with the place of each of its positions."""
    return draw_stock(find_stock(name, STOCKS))


def draw_stock(stock: Stock) -> StockDrawing:
    """Give the geometry of a stock as plain data."""
    places = range(1, stock.positions + 1)
    return StockDrawing(
        **dict(view_stock(stock)),
        radius_mm=stock.radius_mm,
        edge_mm=stock.edge_mm,
        rects=[_rect(stock, position) for position in places],
    )


def view_stock(stock: Stock) -> StockView:
    """Give the measures of a stock, without its positions."""
    return StockView(
        name=stock.name,
        medium=stock.medium.value,
        positions=stock.positions,
        columns=stock.columns,
        rows=stock.rows,
        page_mm=(stock.page.width_mm, stock.page.height_mm),
        position_mm=(stock.label.width_mm, stock.label.height_mm),
    )


def _rect(stock: Stock, position: int) -> PositionRect:
    rect = stock.position_rect(position)
    return PositionRect(
        position=position,
        x_mm=round(rect.x_mm, 4),
        y_mm=round(rect.y_mm, 4),
        width_mm=rect.width_mm,
        height_mm=rect.height_mm,
    )
