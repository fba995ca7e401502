"""The grid of a contents card: how many columns, how large the pictures, nothing lost.

Pure arithmetic on a space and on the numbers of objects in each group (a group is a layer). Every
way of dividing the space is tried; the one with the largest pictures wins, with a little taken off
for cells left empty.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from service.geometry import Size

FLOOR_MM = 16.0
"""The least short side of a picture that still tells what it shows (common practice, no source)."""
GOOD_MM = 25.0
"""A short side at which a picture is recognised at arm's length (common practice, no source)."""
_WIDEST_RATIO = 1.45
"""A frame wider or higher than this times its other side is mostly empty."""
_EMPTY_CELL_COST = 0.35
_CAPTION_BESIDE_RATIO = 0.55
"""The most of a cell's width a picture takes when its caption stands beside it."""


@dataclass(frozen=True, slots=True)
class CaptionNeeds:
    """What a caption needs: least width, its height, and a column for marks at the cell's right.

    `height_mm` is that of a caption below a picture; beside one it may use the whole cell.
    """

    width_mm: float
    height_mm: float
    gap_mm: float
    marks_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class GridSpace:
    """The space of a grid: gaps between cells, and the height of a group's heading."""

    size: Size
    gap_x_mm: float
    gap_y_mm: float
    heading_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class GridPlan:
    """A division of the space: equal cells, the frame of the picture, where the caption stands."""

    columns: int
    rows: int
    cell: Size
    frame: Size
    beside: bool

    @property
    def picture_mm(self) -> float:
        """The short side of a picture's frame."""
        return min(self.frame.width_mm, self.frame.height_mm)


def plan_grid(
    space: GridSpace, groups: Sequence[int], needs: CaptionNeeds, *, columns: int = 0, rows: int = 0
) -> GridPlan | None:
    """Find the best division for groups of that many objects; None where nothing fits.

    `columns` and `rows` fix the grid, for a container whose compartments the card repeats.
    """
    total = sum(groups)
    tried = (columns,) if columns else range(1, total + 1)
    plans = [
        plan
        for count in tried
        for plan in _plans_for(space, groups, needs, count, rows)
        if plan.picture_mm > 0
    ]
    return max(plans, key=lambda plan: _score(plan, total), default=None)


def _plans_for(
    space: GridSpace, groups: Sequence[int], needs: CaptionNeeds, columns: int, fixed_rows: int
) -> Iterable[GridPlan]:
    rows = fixed_rows or sum(math.ceil(count / columns) for count in groups)
    headings_mm = space.heading_mm * len(groups)
    width_mm = (space.size.width_mm - (columns - 1) * space.gap_x_mm) / columns
    height_mm = (space.size.height_mm - headings_mm - (rows - 1) * space.gap_y_mm) / rows
    cell = Size(width_mm, height_mm)
    if width_mm >= needs.width_mm:
        yield GridPlan(columns, rows, cell, _frame_above(cell, needs), beside=False)
    frame = _frame_beside(cell, needs)
    if height_mm >= needs.height_mm and frame.width_mm > 0:
        yield GridPlan(columns, rows, cell, frame, beside=True)


def _frame_above(cell: Size, needs: CaptionNeeds) -> Size:
    height_mm = cell.height_mm - needs.height_mm - needs.gap_mm
    return _bound_shape(cell.width_mm - needs.marks_mm, height_mm)


def _frame_beside(cell: Size, needs: CaptionNeeds) -> Size:
    free_mm = cell.width_mm - needs.width_mm - needs.gap_mm - needs.marks_mm
    width_mm = min(free_mm, cell.width_mm * _CAPTION_BESIDE_RATIO)
    return _bound_shape(width_mm, cell.height_mm)


def _bound_shape(width_mm: float, height_mm: float) -> Size:
    return Size(min(width_mm, height_mm * _WIDEST_RATIO), min(height_mm, width_mm * _WIDEST_RATIO))


def _score(plan: GridPlan, total: int) -> float:
    empty_ratio = 1 - total / (plan.columns * plan.rows)
    return plan.picture_mm * (1 - _EMPTY_CELL_COST * max(0.0, empty_ratio))


def capacity(space: GridSpace, needs: CaptionNeeds, *, least_mm: float = FLOOR_MM) -> int:
    """Say how many objects of one group fit with pictures of at least `least_mm`."""
    low, high = 0, 400
    while low < high:
        middle = (low + high + 1) // 2
        plan = plan_grid(space, [middle], needs)
        fits = plan is not None and plan.picture_mm >= least_mm
        low, high = (middle, high) if fits else (low, middle - 1)
    return low
