"""Puts the cells of a contents card where its plan says, layer under layer."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from service.cards.parts import CardLayer
from service.geometry import Point, Rect
from service.pages.lid.cells import Scale, set_cell
from service.pages.lid.grid import GridPlan, GridSpace
from service.pages.page import Block, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.text import Spot, set_text
from service.pages.setting.type import LEAST_OBJECT_NUMBER_PT

_HEADING = TextStyle(LEAST_OBJECT_NUMBER_PT, weight=700, leading_ratio=1.2)


@dataclass(frozen=True, slots=True)
class Fit:
    """A plan with its type sizes; `fixed` where cells repeat the container's compartments."""

    plan: GridPlan
    scale: Scale
    fixed: bool


def set_grid(
    ruler: Ruler, layers: Sequence[CardLayer], area: Rect, fit: Fit, grid_space: GridSpace
) -> tuple[Block, ...]:
    """Set every object; in a `fixed` grid each stands where its compartment lies."""
    plan, scale, fixed = fit.plan, fit.scale, fit.fixed
    blocks: list[Block] = []
    y_mm = area.y_mm
    for layer in layers:
        if grid_space.heading_mm and layer.heading:
            blocks.append(_set_heading(ruler, layer.heading, area, y_mm))
            y_mm += grid_space.heading_mm
        rows = plan.rows if fixed else math.ceil(len(layer.objects) / plan.columns)
        for index, item in enumerate(layer.objects):
            row, column = divmod(index, plan.columns)
            if fixed and item.cell is not None:
                column, row = item.cell
            place = _place(plan, grid_space, Point(area.x_mm, y_mm), (column, row))
            blocks.extend(set_cell(ruler, item, place, plan, scale))
        if fixed:
            blocks.extend(_set_empty(layer, plan, grid_space, Point(area.x_mm, y_mm)))
        y_mm += rows * (plan.cell.height_mm + grid_space.gap_y_mm)
    return tuple(blocks)


def _place(plan: GridPlan, space: GridSpace, origin: Point, cell: tuple[int, int]) -> Point:
    """Give the top left corner of a cell, counted in columns and rows from `origin`."""
    column, row = cell
    return Point(
        origin.x_mm + column * (plan.cell.width_mm + space.gap_x_mm),
        origin.y_mm + row * (plan.cell.height_mm + space.gap_y_mm),
    )


def _set_heading(ruler: Ruler, words: str, area: Rect, y_mm: float) -> Block:
    return set_text(ruler, words, _HEADING, Spot(area.x_mm, y_mm, area.width_mm, 1), "layer")


def _set_empty(
    layer: CardLayer, plan: GridPlan, space: GridSpace, origin: Point
) -> Sequence[Block]:
    """Outline the compartments nothing lies in, so that the map stays a map."""
    taken = {item.cell for item in layer.objects}
    empty = [
        _place(plan, space, origin, (column, row))
        for row in range(plan.rows)
        for column in range(plan.columns)
        if (column, row) not in taken
    ]
    return [
        ShapeBlock(
            "empty-compartment",
            Rect(place.x_mm, place.y_mm, plan.cell.width_mm, plan.cell.height_mm),
            outline_mm=0.2,
            dashed=True,
        )
        for place in empty
    ]
