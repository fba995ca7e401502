"""Labels in columns and rows, in the middle of a page."""

from __future__ import annotations

from dataclasses import dataclass

from service.geometry import Size
from service.sheets.stock import Medium, Stock


@dataclass(frozen=True, slots=True)
class Grid:
    """Equal labels in columns and rows, wherever they lie on a page.

    Attributes:
        columns: Labels side by side.
        rows: Labels one above the other.
        label: One label.
        pitch: From the top left corner of one label to that of the next, to the right and down.
    """

    columns: int
    rows: int
    label: Size
    pitch: Size

    @property
    def block(self) -> Size:
        """The size of all labels with the gaps between them."""
        return Size(
            (self.columns - 1) * self.pitch.width_mm + self.label.width_mm,
            (self.rows - 1) * self.pitch.height_mm + self.label.height_mm,
        )


def centred_stock(name: str, page: Size, grid: Grid, *, radius_mm: float, medium: Medium) -> Stock:
    """Make a stock whose labels stand in the middle of the page.

    Raises:
        StockError: When the labels are larger than the page, or anything else `Stock` refuses.
    """
    return Stock(
        name=name,
        page=page,
        columns=grid.columns,
        rows=grid.rows,
        label=grid.label,
        pitch_x_mm=grid.pitch.width_mm,
        pitch_y_mm=grid.pitch.height_mm,
        left_mm=_half_of_rest(page.width_mm, grid.block.width_mm),
        top_mm=_half_of_rest(page.height_mm, grid.block.height_mm),
        radius_mm=radius_mm,
        medium=medium,
    )


def _half_of_rest(whole_mm: float, part_mm: float) -> float:
    """Give the margin that centres a part; a part too large begins at the edge and is refused."""
    return max(0.0, (whole_mm - part_mm) / 2)
