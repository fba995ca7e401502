"""Blocks set at one place and moved as one."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from service.pages.page import Block


def move_blocks(blocks: Iterable[Block], dx_mm: float, dy_mm: float) -> tuple[Block, ...]:
    """Give the same blocks shifted right and down."""
    return tuple(replace(block, rect=block.rect.moved(dx_mm, dy_mm)) for block in blocks)


def bottom_of(blocks: Iterable[Block]) -> float:
    """Give the y of the lowest edge, 0 where there are no blocks."""
    return max((block.rect.bottom_mm for block in blocks), default=0.0)
