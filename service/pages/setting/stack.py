"""Blocks gathered from top to bottom, and moved as one."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from service.pages.page import Block


@dataclass(slots=True)
class Stack:
    """Blocks in the order of reading; `bottom_mm` is where the next one may begin."""

    bottom_mm: float
    blocks: list[Block] = field(default_factory=list)

    def add(self, block: Block, *, gap_mm: float = 0.0) -> None:
        """Put a block below the last one; its own y is where it was set."""
        self.blocks.append(block)
        self.bottom_mm = max(self.bottom_mm, block.rect.bottom_mm + gap_mm)


def move_blocks(blocks: Iterable[Block], dx_mm: float, dy_mm: float) -> tuple[Block, ...]:
    """Give the same blocks shifted right and down."""
    return tuple(replace(block, rect=block.rect.moved(dx_mm, dy_mm)) for block in blocks)


def bottom_of(blocks: Iterable[Block]) -> float:
    """Give the y of the lowest edge, 0 where there are no blocks."""
    return max((block.rect.bottom_mm for block in blocks), default=0.0)
