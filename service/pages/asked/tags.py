"""What tags have in common: the hole for the tape, hazards with their words, and the numbering."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from service.cards.parts import SecondWords, Warn
from service.geometry import Point, Rect
from service.pages.look import HAIRLINE_MM
from service.pages.page import Block, MarkBlock, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.rows import Row
from service.pages.setting.second import set_second
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_text
from service.pages.setting.type import LEAST_CAPTION_PT

HAZARD = TextStyle(LEAST_CAPTION_PT + 0.6, weight=700, leading_ratio=1.12)
_SECOND_GAP_MM = 0.3
SMALL = TextStyle(LEAST_CAPTION_PT, leading_ratio=1.15)


def set_hole(centre: Point, diameter_mm: float) -> Block:
    """Mark where the hole for the tape goes."""
    corner = Rect(
        centre.x_mm - diameter_mm / 2, centre.y_mm - diameter_mm / 2, diameter_mm, diameter_mm
    )
    return ShapeBlock("hole", corner, outline_mm=HAIRLINE_MM, radius_mm=diameter_mm / 2)


def set_warning(
    ruler: Ruler, warn: Warn, width_mm: float, mark_mm: float, second: SecondWords | None = None
) -> Row:
    """Set a mark with its words beside it, below them what to do, and both in a second language."""
    x_mm = mark_mm + 1.4
    spot = Spot(x_mm, 0, width_mm - x_mm)
    heading = set_text(ruler, warn.heading, HAZARD, spot, "mark-words")
    words: list[Block] = [heading]
    if warn.instruction:
        below = Spot(x_mm, heading.rect.bottom_mm, spot.width_mm)
        words.append(set_text(ruler, warn.instruction, SMALL, below, "instruction"))
    again = Spot(x_mm, bottom_of(words) + _SECOND_GAP_MM, spot.width_mm)
    words += set_second(ruler, second, (warn.heading, warn.instruction), again)
    words_mm = bottom_of(words)
    height_mm = max(mark_mm, words_mm)
    mark = MarkBlock("mark", Rect(0, 0, mark_mm, mark_mm), warn.mark, warn.heading)
    return Row((mark, *move_blocks(words, 0, (height_mm - words_mm) / 2)), height_mm + 0.8)


def pair_rows(rows: Sequence[Row], columns: int, step_mm: float) -> Iterable[Row]:
    """Put rows side by side, as many as there are columns."""
    for start in range(0, len(rows), columns):
        some = rows[start : start + columns]
        blocks = [
            block
            for index, row in enumerate(some)
            for block in move_blocks(row.blocks, index * step_mm, 0)
        ]
        yield Row(tuple(blocks), max(row.height_mm for row in some))
