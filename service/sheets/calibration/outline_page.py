"""The outlines of a stock's labels as a page, to lay over a real sheet and hold to the light."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from service.geometry import Rect, Size
from service.pages.page import Align, Block, Page, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.text import Spot, set_text
from service.sheets.calibration.ruler_page import KIND
from service.sheets.stock import Stock

OUTLINE_MM = 0.2
"""Thickness of an outline; it lies within the label."""

_NUMBER = TextStyle(11.0, weight=700, align=Align.CENTRE)
_WORDS = TextStyle(7.5, align=Align.CENTRE)
_MARGIN_MM = 3.0
_LEAST_MM = Size(14.0, 11.0)
"""A smaller label has no room for a number; ours."""
_HOW = (
    "{name}. Print at 100\N{NO-BREAK SPACE}% on plain paper, lay it over a sheet of labels and hold"
    " both to the light: every outline must lie on the edge of its label."
)


def outline_page(stock: Stock, ruler: Ruler) -> Page:
    """Draw each label's outline and number; the first says how to look."""
    labels = [stock.position_rect(position) for position in range(1, stock.positions + 1)]
    blocks = [side for label in labels for side in _outline(label)]
    if stock.label.width_mm >= _LEAST_MM.width_mm and stock.label.height_mm >= _LEAST_MM.height_mm:
        blocks += _words(stock, labels, ruler)
    return Page(KIND, "", f"Test sheet, {stock.name}", 1, 1, stock.page, tuple(blocks))


def _words(stock: Stock, labels: Sequence[Rect], ruler: Ruler) -> Iterator[Block]:
    """Set the number of each label, and into the first how to look, where it has the room."""
    width_mm = stock.label.width_mm - 2 * _MARGIN_MM
    for position, label in enumerate(labels, start=1):
        spot = Spot(label.x_mm + _MARGIN_MM, label.y_mm + _MARGIN_MM, width_mm)
        yield set_text(ruler, str(position), _NUMBER, spot, "step")
    first = labels[0]
    top_mm = first.y_mm + _MARGIN_MM + _NUMBER.leading_mm
    spot = Spot(first.x_mm + _MARGIN_MM, top_mm, width_mm)
    words = set_text(ruler, _HOW.format(name=stock.name), _WORDS, spot, "step")
    if words.rect.bottom_mm <= first.bottom_mm - _MARGIN_MM:
        yield words


def _outline(label: Rect) -> Iterator[Block]:
    """Give the four sides of a label as thin rectangles."""
    x_mm, y_mm = label.x_mm, label.y_mm
    right_mm, bottom_mm = label.right_mm - OUTLINE_MM, label.bottom_mm - OUTLINE_MM
    for rect in (
        Rect(x_mm, y_mm, label.width_mm, OUTLINE_MM),
        Rect(x_mm, bottom_mm, label.width_mm, OUTLINE_MM),
        Rect(x_mm, y_mm, OUTLINE_MM, label.height_mm),
        Rect(right_mm, y_mm, OUTLINE_MM, label.height_mm),
    ):
        yield ShapeBlock("line", rect, fill=Shade.BLACK)
