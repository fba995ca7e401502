"""Which kinds of card a stock is for, told from its material and its size alone."""

from __future__ import annotations

from collections.abc import Iterable

from service.cards.kinds import CardKind
from service.geometry import Size
from service.pipeline.usual_stocks import TRIED
from service.sheets.stock import Medium, Stock
from service.sheets.stocks import STOCKS, find_stock

_MOST_RATIO = 1.5
"""A stock of more than half as much again as the largest that is tried wastes paper: ours."""


def suited_kinds(stock: Stock) -> tuple[CardKind, ...]:
    """Give the kinds that a stock suits: of their material, and about as large as they are made.

    It is a first advice: what is on a card decides whether it fits.
    """
    return tuple(kind for kind in TRIED if _suits(kind, stock))


def _suits(kind: CardKind, stock: Stock) -> bool:
    if kind.sticky is not (stock.medium is Medium.STICKY):
        return False
    tried = [find_stock(name, STOCKS).label for names in TRIED[kind].values() for name in names]
    largest_mm2 = max(map(_area_mm2, tried))
    holds = any(stock.label.holds(size) or stock.label.holds(size.turned) for size in tried)
    return holds and _area_mm2(stock.label) <= largest_mm2 * _MOST_RATIO


def _area_mm2(size: Size) -> float:
    return size.width_mm * size.height_mm


def name_kinds(kinds: Iterable[CardKind]) -> str:
    """Name kinds in a line, such as `Lid card, Side card`."""
    return ", ".join(kind.name for kind in kinds)
