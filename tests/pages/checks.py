"""What every page owes its reader, looked at block by block."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import combinations

from service.geometry import Insets, Rect
from service.pages.page import (
    Align,
    Block,
    Direction,
    MarkBlock,
    Page,
    PictureBlock,
    SymbolBlock,
    TextBlock,
)
from service.pages.ruler import Ruler
from service.units import mm_from_points

_ABOVE_RATIO, _BELOW_RATIO = 0.36, 0.45
"""How far capitals and the usual descenders reach from the middle of a line, over type size."""
_TOUCH_MM = 0.05


def texts(pages: Iterable[Page], purpose: str) -> list[TextBlock]:
    """Give the texts of a purpose, in the order of reading."""
    return [
        block
        for page in pages
        for block in page.blocks
        if isinstance(block, TextBlock) and block.purpose == purpose
    ]


def said(pages: Iterable[Page], purpose: str) -> list[str]:
    """Give what the texts of a purpose say, whole."""
    return [block.whole for block in texts(pages, purpose)]


def numbers(pages: Iterable[Page]) -> list[str]:
    """Give every object number that stands on the pages, as its lines say it."""
    return ["".join(block.lines) for block in texts(pages, "object-number")]


def pictures(pages: Iterable[Page], purpose: str = "photo") -> list[PictureBlock]:
    """Give the photo frames."""
    return [
        block
        for page in pages
        for block in page.blocks
        if isinstance(block, PictureBlock) and block.purpose == purpose
    ]


def marks(pages: Iterable[Page], purpose: str = "mark") -> list[MarkBlock]:
    """Give the pictograms of a purpose."""
    return [
        block
        for page in pages
        for block in page.blocks
        if isinstance(block, MarkBlock) and block.purpose == purpose
    ]


def symbols(page: Page) -> list[SymbolBlock]:
    """Give the QR symbols of a page."""
    return [block for block in page.blocks if isinstance(block, SymbolBlock)]


def ink_rects(block: Block, ruler: Ruler) -> list[Rect]:
    """Give where a block prints: each line of a text alone, anything else whole."""
    if not isinstance(block, TextBlock):
        return [block.rect]
    em_mm = mm_from_points(block.style.size_pt)
    rects = []
    for index, line in enumerate(block.lines):
        width_mm = ruler.width_mm(line, block.style)
        middle_mm = block.rect.y_mm + (index + 0.5) * block.style.leading_mm
        y_mm = middle_mm - _ABOVE_RATIO * em_mm
        height_mm = (_ABOVE_RATIO + _BELOW_RATIO) * em_mm
        rects.append(Rect(_line_x_mm(block, width_mm), y_mm, width_mm, height_mm))
    return rects


def _line_x_mm(block: TextBlock, width_mm: float) -> float:
    free_mm = block.rect.width_mm - width_mm
    at_end = block.style.align is Align.END
    if block.style.align is Align.CENTRE:
        return block.rect.x_mm + free_mm / 2
    rightward = block.direction is Direction.LEFT_TO_RIGHT
    return block.rect.x_mm + (free_mm if at_end is rightward else 0.0)


def collisions(page: Page, ruler: Ruler) -> list[str]:
    """Name the pairs of blocks whose ink meets; texts in an empty frame belong there."""
    inked = [
        (block, ink_rects(block, ruler))
        for block in page.blocks
        if isinstance(block, TextBlock | MarkBlock | SymbolBlock)
        or (isinstance(block, PictureBlock) and block.photo)
    ]
    return [
        f"{_name(one)} meets {_name(other)}"
        for (one, first), (other, second) in combinations(inked, 2)
        if any(a.overlaps(b, tolerance_mm=_TOUCH_MM) for a in first for b in second)
    ]


def strays(page: Page, ruler: Ruler, *, margin_mm: float) -> list[str]:
    """Name the blocks whose ink comes nearer to the edge than `margin_mm`.

    The clear margin of a symbol may lie there; only its dark part counts.
    """
    whole = Rect(0, 0, page.size.width_mm, page.size.height_mm)
    inside = whole.inset(Insets(margin_mm, margin_mm, margin_mm, margin_mm))
    return [
        _name(block)
        for block in page.blocks
        if not all(inside.holds(rect, tolerance_mm=_TOUCH_MM) for rect in _dark(block, ruler))
    ]


def _dark(block: Block, ruler: Ruler) -> list[Rect]:
    if isinstance(block, SymbolBlock):
        clear_mm = block.quiet_zone_modules * block.module_mm
        return [block.rect.inset(Insets(clear_mm, clear_mm, clear_mm, clear_mm))]
    return ink_rects(block, ruler)


def _name(block: Block) -> str:
    words = f" {block.whole!r}" if isinstance(block, TextBlock) else ""
    return f"{block.purpose}{words}"
