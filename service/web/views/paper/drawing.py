"""Sheets as drawings: the paper, and each label or card on it where it lies."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from service.geometry import Rect, Size
from service.sheets.calibration.ruler_sheet import crosses_on
from service.sheets.stock import Stock

_ARM_MM = 8.0


@dataclass(frozen=True, slots=True)
class Drawing:
    """A sheet to draw, in mm: its size, its labels as one path, and how large it is shown."""

    page: Size
    labels: str
    width_px: float
    height_px: float


def draw_stock(stock: Stock, *, px_per_mm: float = 0.5) -> Drawing:
    """Draw a stock to scale, so that sheets beside each other can be told apart at a glance."""
    labels = "".join(
        _path(stock.position_rect(position)) for position in range(1, stock.positions + 1)
    )
    return _scaled(stock.page, labels, px_per_mm)


def draw_crosses(page: Size, *, px_per_mm: float = 1.0) -> Drawing:
    """Draw a ruler sheet: its crosses where they are printed."""
    lines = "".join(
        f"M{_n(x_mm - _ARM_MM)} {_n(y_mm)}h{_n(2 * _ARM_MM)}"
        f"M{_n(x_mm)} {_n(y_mm - _ARM_MM)}v{_n(2 * _ARM_MM)}"
        for cross in crosses_on(page)
        for x_mm, y_mm in ((cross.place.x_mm, cross.place.y_mm),)
    )
    return _scaled(page, lines, px_per_mm)


def figure(drawing: Drawing, css_class: str = "stock-drawing") -> Markup:
    """Write a drawing as SVG within a page; it says nothing that does not stand beside it."""
    page = drawing.page
    return Markup(
        '<svg class="{}" viewBox="-1 -1 {} {}" width="{}" height="{}" aria-hidden="true">'
        '<rect class="paper" width="{}" height="{}"/><path class="die" d="{}"/></svg>'
    ).format(
        css_class,
        _n(page.width_mm + 2),
        _n(page.height_mm + 2),
        _n(drawing.width_px),
        _n(drawing.height_px),
        _n(page.width_mm),
        _n(page.height_mm),
        drawing.labels,
    )


def _scaled(page: Size, path: str, px_per_mm: float) -> Drawing:
    return Drawing(page, path, page.width_mm * px_per_mm, page.height_mm * px_per_mm)


def _path(rect: Rect) -> str:
    across, down = _n(rect.width_mm), _n(rect.height_mm)
    return f"M{_n(rect.x_mm)} {_n(rect.y_mm)}h{across}v{down}h-{across}z"


def _n(length: float) -> str:
    """Write a length with no more figures than can be seen."""
    return f"{length:.1f}".removesuffix(".0")
