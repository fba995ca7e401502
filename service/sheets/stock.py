"""A kind of sheet, told by its geometry alone."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from service.errors import StartPositionError, StockError
from service.geometry import TOLERANCE_MM, Insets, Rect, Size
from service.sentence import Sentence
from service.units import mm_from_inches, mm_from_points

MOST_POSITIONS = 1000
"""More labels than this on one sheet is a slip of the pen; ours."""

LARGEST_PAGE_MM = mm_from_points(14_400)
"""The largest page readers of PDF must accept (ISO 32000-1, annex C; from memory)."""

UNPRINTABLE_EDGE_MM = mm_from_inches(1 / 6)
"""What an office laser printer leaves white on each edge; from memory."""

_MAY_BE_NOTHING = frozenset({"left", "top", "radius", "edge"})

_Fault = tuple[str, str]
"""The measure, and a reason that reads on from its name."""


class Medium(StrEnum):
    """What a sheet is made of."""

    STICKY = "sticky"
    """Die-cut labels: for the outside of boxes and shelves only."""
    CARD = "card"
    """Plain card, cut apart by hand."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """A kind of sheet: equal positions in columns and rows.

    Attributes:
        name: What people call it, made of its measures.
        page: The whole sheet.
        columns: Positions side by side.
        rows: Positions one above the other.
        label: One position, upright as the sheet lies.
        pitch_x_mm: From the left edge of one column to that of the next.
        pitch_y_mm: From the top edge of one row to that of the next.
        left_mm: From the left edge of the page to the first column.
        top_mm: From the top edge of the page to the first row.
        radius_mm: Radius of the labels' corners.
        medium: Sticky or card.
        edge_mm: What the printers for this stock usually leave white on each side.

    Raises:
        StockError: When built from measures that contradict each other.
    """

    name: str
    page: Size
    columns: int
    rows: int
    label: Size
    pitch_x_mm: float
    pitch_y_mm: float
    left_mm: float
    top_mm: float
    radius_mm: float
    medium: Medium
    edge_mm: float = UNPRINTABLE_EDGE_MM

    def __post_init__(self) -> None:
        """Refuse a sheet that cannot exist, naming the measure.

        Raises:
            StockError: For the first measure found wrong.
        """
        for measure, reason in _faults(self):
            raise StockError(self.name, measure=measure, reason=reason)

    @property
    def positions(self) -> int:
        """How many positions a sheet has."""
        return self.columns * self.rows

    def position_rect(self, position: int) -> Rect:
        """Give the rectangle of a position, counted from 1 in reading order.

        Raises:
            StartPositionError: When the sheet has no such position.
        """
        if not 1 <= position <= self.positions:
            raise StartPositionError(position, positions=self.positions)
        row, column = divmod(position - 1, self.columns)
        return Rect(
            self.left_mm + column * self.pitch_x_mm,
            self.top_mm + row * self.pitch_y_mm,
            self.label.width_mm,
            self.label.height_mm,
        )

    @property
    def edges(self) -> Insets:
        """What the printers for this stock usually leave white, as insets."""
        return Insets(self.edge_mm, self.edge_mm, self.edge_mm, self.edge_mm)

    def printable_rect(self, edges: Insets | None = None, *, edge_mm: float | None = None) -> Rect:
        """Give the part of the page a printer reaches that leaves `edges` white, or the usual."""
        page = Rect(0, 0, self.page.width_mm, self.page.height_mm)
        if edge_mm is not None:
            edges = Insets(edge_mm, edge_mm, edge_mm, edge_mm)
        return page.inset(edges or self.edges)

    def turn_for(self, size: Size) -> int | None:
        """Say how far a page of `size` must be turned to fit a position: 0, 90 or not at all."""
        if self.label.holds(size):
            return 0
        return 90 if self.label.holds(size.turned) else None


def _faults(stock: Stock) -> Iterator[_Fault]:
    """Say what is wrong, the plainest first: later checks rely on the earlier ones."""
    yield from _count_faults(stock)
    yield from _length_faults(stock)
    yield from _overlap_faults(stock)
    yield from _page_faults(stock)
    if stock.radius_mm > min(stock.label.width_mm, stock.label.height_mm) / 2 + TOLERANCE_MM:
        yield "radius", Sentence("is more than half the label's short side")


def _count_faults(stock: Stock) -> Iterator[_Fault]:
    if not stock.name.strip():
        yield "name", Sentence("is empty")
    if stock.columns < 1:
        yield "columns", Sentence("must be 1 or more")
    if stock.rows < 1:
        yield "rows", Sentence("must be 1 or more")
    if stock.positions > MOST_POSITIONS:
        yield (
            Sentence("columns x rows"),
            Sentence("is more than {most_positions} positions", most_positions=MOST_POSITIONS),
        )


def _length_faults(stock: Stock) -> Iterator[_Fault]:
    for measure, length_mm in _lengths_mm(stock).items():
        if not math.isfinite(length_mm):
            yield measure, Sentence("is not a finite number")
        elif length_mm < 0:
            yield measure, Sentence("is less than nothing")
        elif length_mm == 0 and measure not in _MAY_BE_NOTHING:
            yield measure, Sentence("is nothing")


def _lengths_mm(stock: Stock) -> dict[str, float]:
    return {
        Sentence("page width"): stock.page.width_mm,
        Sentence("page height"): stock.page.height_mm,
        Sentence("label width"): stock.label.width_mm,
        Sentence("label height"): stock.label.height_mm,
        Sentence("pitch x"): stock.pitch_x_mm,
        Sentence("pitch y"): stock.pitch_y_mm,
        "left": stock.left_mm,
        "top": stock.top_mm,
        "radius": stock.radius_mm,
        "edge": stock.edge_mm,
    }


def _overlap_faults(stock: Stock) -> Iterator[_Fault]:
    if stock.columns > 1 and stock.pitch_x_mm < stock.label.width_mm - TOLERANCE_MM:
        yield Sentence("pitch x"), Sentence("is less than the label width, so labels overlap")
    if stock.rows > 1 and stock.pitch_y_mm < stock.label.height_mm - TOLERANCE_MM:
        yield Sentence("pitch y"), Sentence("is less than the label height, so labels overlap")


def _page_faults(stock: Stock) -> Iterator[_Fault]:
    for measure, length_mm in (
        (Sentence("page width"), stock.page.width_mm),
        (Sentence("page height"), stock.page.height_mm),
    ):
        if length_mm > LARGEST_PAGE_MM:
            yield (
                measure,
                Sentence("is more than {largest_page_mm:.0f} mm", largest_page_mm=LARGEST_PAGE_MM),
            )
    last = stock.position_rect(stock.positions)
    for measure, beyond_mm in (
        (Sentence("the last column"), last.right_mm - stock.page.width_mm),
        (Sentence("the last row"), last.bottom_mm - stock.page.height_mm),
    ):
        if beyond_mm > TOLERANCE_MM:
            yield measure, f"leaves the page by {beyond_mm:.2f} mm"
