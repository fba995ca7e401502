"""Regions: the connected things of a black and white picture."""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PIL import Image

Box = tuple[int, int, int, int]
"""Left, top, right, bottom in pixels; right and bottom lie just outside."""

# Fewer pixels than this are dust.
_SPECK_PIXELS = 4
_RUN = re.compile(rb"\xff+")


@dataclass(frozen=True, slots=True)
class Region:
    """One connected thing: its box and how many of the pixels in it are its own."""

    box: Box
    pixels: int

    @property
    def sides(self) -> tuple[int, int]:
        """Width and height of the box."""
        return self.box[2] - self.box[0], self.box[3] - self.box[1]

    @property
    def fill_ratio(self) -> float:
        """Share of the box that is its own."""
        return self.pixels / (self.sides[0] * self.sides[1])


def find_regions(mask: Image.Image) -> tuple[Region, ...]:
    """Give the connected things of an L image of 0 and 255, specks left out."""
    regions = (_region(group) for group in _connected(_runs(mask)))
    return tuple(region for region in regions if region.pixels >= _SPECK_PIXELS)


Run = tuple[int, int, int]
"""Row, first column, column after the last."""


def _runs(mask: Image.Image) -> list[list[Run]]:
    width, height = mask.size
    data = mask.tobytes()
    lines = (data[row * width : (row + 1) * width] for row in range(height))
    return [
        [(row, found.start(), found.end()) for found in _RUN.finditer(line)]
        for row, line in enumerate(lines)
    ]


def _connected(rows: list[list[Run]]) -> list[list[Run]]:
    """Group runs that touch from row to row."""
    group_of: dict[Run, list[Run]] = {}
    for above, below in pairwise([[], *rows]):
        for run in below:
            group_of[run] = [run]
            for other in above:
                if other[1] <= run[2] and run[1] <= other[2]:
                    _merge(group_of, group_of[other], group_of[run])
    return list({id(group): group for group in group_of.values()}.values())


def _merge(group_of: dict[Run, list[Run]], first: list[Run], second: list[Run]) -> None:
    if first is not second:
        first.extend(second)
        for run in second:
            group_of[run] = first


def _region(group: list[Run]) -> Region:
    left, right = min(run[1] for run in group), max(run[2] for run in group)
    top, bottom = min(run[0] for run in group), max(run[0] for run in group) + 1
    return Region((left, top, right, bottom), sum(run[2] - run[1] for run in group))
