"""The first sheet of each stock, as a picture of boxes to tick where a position is gone."""

from __future__ import annotations

import hashlib
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from service.cards.kinds import find_kind
from service.keeping.printing.paper import Paper, PaperNeeded, choose_paper
from service.languages.saying import said
from service.sheets.printers.used_sheet import UsedSheet, next_start
from service.sheets.stock import Stock
from service.store.kept.used_sheets import load_used_sheets
from service.web.store.cards.wanted import PrintBody
from service.web.store.counter import Counter
from service.web.views.desk.form import look_up


@dataclass(frozen=True, slots=True)
class Position:
    """One position, from 1 in reading order, and whether it is gone."""

    number: int
    is_gone: bool


@dataclass(frozen=True, slots=True)
class FirstSheet:
    """A stock and the sheet of it that goes first; `begun` are the positions known to be gone."""

    paper: Paper
    kinds: tuple[str, ...]
    positions: tuple[Position, ...]
    begun: tuple[int, ...]
    start: int

    @property
    def look(self) -> str:
        """The class that gives the picture the geometry of the stock."""
        return look_of(self.paper.stock)


@dataclass(frozen=True, slots=True)
class Tray:
    """What to put in the printer, what was noticed, and whether more cards were asked for."""

    sheets: tuple[FirstSheet, ...]
    needed: PaperNeeded


def lay_tray(counter: Counter, body: PrintBody, *, fresh: Collection[str] = ()) -> Tray:
    """Say which sheets are needed; of `fresh` stocks a new one is taken, whatever was begun.

    Raises:
        ServiceError: When something of the order does not exist.
    """
    options = look_up(counter, body)
    with counter.measuring() as ruler, counter.reading() as connection:
        needed = choose_paper(connection, ruler, options)
        begun = {sheet.stock: sheet for sheet in load_used_sheets(connection)}
    ticked = {sheet.stock: frozenset(sheet.positions) for sheet in body.sheets}
    sheets = tuple(
        _lay(paper, begun, ticked.get(paper.stock.name), is_fresh=paper.stock.name in fresh)
        for paper in needed.papers
    )
    return Tray(sheets, needed)


def look_of(stock: Stock) -> str:
    """Name the geometry of a stock: its measures, as a class of the style."""
    return f"stock-{hashlib.sha256(stock.name.encode()).hexdigest()[:10]}"


def write_looks(stocks: Iterable[Stock]) -> str:
    """Write the style that draws each stock to scale; a row is never lower than a finger needs."""
    return "\n".join(_write_look(stock) for stock in stocks) + "\n"


def _lay(
    paper: Paper,
    begun: Mapping[str, UsedSheet],
    ticked: frozenset[int] | None,
    *,
    is_fresh: bool,
) -> FirstSheet:
    name = paper.stock.name
    known = begun.get(name, UsedSheet(name, frozenset())).positions
    gone = frozenset[int]() if is_fresh else known if ticked is None else ticked
    return FirstSheet(
        paper,
        tuple(said(find_kind(kind).name) for kind in paper.kinds),
        tuple(Position(n, n in gone) for n in range(1, paper.stock.positions + 1)),
        tuple(sorted(known)),
        next_start([UsedSheet(name, gone)], paper.stock).position,
    )


def _write_look(stock: Stock) -> str:
    """Write lengths as shares of the width of the sheet, which the picture may have as it likes."""
    last = stock.position_rect(stock.positions)
    share = 100 / stock.page.width_mm
    margins = (
        stock.top_mm,
        stock.page.width_mm - last.right_mm,
        stock.page.height_mm - last.bottom_mm,
        stock.left_mm,
    )
    gaps = (stock.pitch_y_mm - stock.label.height_mm, stock.pitch_x_mm - stock.label.width_mm)
    return (
        f".{look_of(stock)} {{"
        f" aspect-ratio: {stock.page.width_mm:.2f} / {stock.page.height_mm:.2f};"
        f" grid-template-columns: repeat({stock.columns}, minmax(2.75rem, 1fr));"
        f" padding: {' '.join(_share(length_mm, share) for length_mm in margins)};"
        f" gap: {' '.join(_share(length_mm, share) for length_mm in gaps)}; }}"
    )


def _share(length_mm: float, share: float) -> str:
    return f"{max(0.0, length_mm) * share:.2f}cqw"
