from __future__ import annotations

from service.geometry import Rect
from service.pages.page import ShapeBlock
from service.pages.setting.stack import bottom_of, move_blocks

ONE = ShapeBlock("rule", Rect(1, 2, 30, 4))
OTHER = ShapeBlock("rule", Rect(1, 1, 30, 9))


def test_blocks_move_as_one() -> None:
    """Every block is shifted alike and is otherwise the same."""
    moved = move_blocks([ONE, OTHER], 2, -1)
    assert [block.rect for block in moved] == [Rect(3, 1, 30, 4), Rect(3, 0, 30, 9)]
    assert [block.purpose for block in moved] == ["rule", "rule"]


def test_the_lowest_edge() -> None:
    """The bottom is that of whichever block reaches lowest; nothing reaches nowhere."""
    assert bottom_of([ONE, OTHER]) == 10
    assert bottom_of([]) == 0
