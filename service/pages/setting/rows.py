"""Rows shared between faces: nothing is lost, and no heading stands last or is left behind."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.errors import DoesNotFitError
from service.geometry import TOLERANCE_MM
from service.pages.page import Block
from service.pages.setting.stack import move_blocks

_ROW = "row"


@dataclass(frozen=True, slots=True)
class Row:
    """Blocks set at the origin; `heading` is the row that must stand above it on its face."""

    blocks: tuple[Block, ...]
    height_mm: float
    heading: Row | None = None


def share_rows(rows: Sequence[Row], room_mm: float) -> list[list[Row]]:
    """Share rows between faces that have each the same room; there is always one face.

    Headings are not among `rows`: each is put above the first of its rows on every face.

    Raises:
        DoesNotFitError: When a row with its heading is higher than a face.
    """
    faces: list[list[Row]] = [[]]
    left_mm, above = room_mm, None
    for row in rows:
        needed_mm = row.height_mm + _heading_mm(row, above)
        if needed_mm > left_mm + TOLERANCE_MM and faces[-1]:
            faces.append([])
            left_mm, above = room_mm, None
            needed_mm = row.height_mm + _heading_mm(row, above)
        if needed_mm > left_mm + TOLERANCE_MM:
            raise DoesNotFitError(_ROW, needed_mm=needed_mm, available_mm=left_mm)
        if row.heading is not None and row.heading is not above:
            faces[-1].append(row.heading)
        faces[-1].append(row)
        left_mm -= needed_mm
        above = row.heading
    return faces


def stack_rows(rows: Sequence[Row], x_mm: float, y_mm: float) -> tuple[Block, ...]:
    """Put rows one below the other."""
    placed: list[Block] = []
    for row in rows:
        placed.extend(move_blocks(row.blocks, x_mm, y_mm))
        y_mm += row.height_mm
    return tuple(placed)


def _heading_mm(row: Row, above: Row | None) -> float:
    return 0.0 if row.heading is None or row.heading is above else row.heading.height_mm
