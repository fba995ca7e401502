"""The foot of a lid card: whom to ask, who packed, the pen row, and which edge is which."""

from __future__ import annotations

from service.cards.parts import Head
from service.geometry import Rect
from service.pages.look import HAIRLINE_MM
from service.pages.page import Align, Block, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_text
from service.pages.setting.type import CAPTION_PT, LEAST_CAPTION_PT
from service.printed import to_print

NOT_AN_ASSESSMENT = to_print(
    "Repeats the records; not a risk assessment. A silent record is no all-clear."
)
NOBODY = to_print("whoever keeps the records")
PEN_WORDS = to_print("Checked: date, initials")
_PEN_LINES = 3
_PEN_LINE_MM = 22.0

_BOLD = TextStyle(CAPTION_PT, weight=700, leading_ratio=1.2)
_PLAIN = TextStyle(CAPTION_PT, leading_ratio=1.2, align=Align.END)
_SMALL = TextStyle(LEAST_CAPTION_PT, leading_ratio=1.2, align=Align.END)


def set_foot(ruler: Ruler, head: Head, orientation: str, area: Rect) -> tuple[Block, ...]:
    """Set the foot so that it ends at the bottom of `area`."""
    blocks = _set_rows(ruler, head, orientation, area)
    return move_blocks(blocks, 0, area.bottom_mm - bottom_of(blocks))


def _set_rows(ruler: Ruler, head: Head, orientation: str, area: Rect) -> tuple[Block, ...]:
    rule = ShapeBlock("rule", Rect(area.x_mm, 0, area.width_mm, HAIRLINE_MM), Shade.BLACK)
    ask = to_print("Ask first: {asked}", asked=head.questions or NOBODY)
    ask_mm = area.width_mm if not head.packed else area.width_mm * 0.56
    first = [set_text(ruler, ask, _BOLD, Spot(area.x_mm, 1.0, ask_mm), "questions")]
    if head.packed:
        x_mm = area.x_mm + ask_mm + 2
        spot = Spot(x_mm, 1.0, area.right_mm - x_mm)
        first.append(set_text(ruler, head.packed, _PLAIN, spot, "packed"))
    pens = _set_pens(ruler, area, bottom_of(first) + 0.8)
    last = _set_last(ruler, orientation, area, bottom_of(pens) + 0.6)
    return (rule, *first, *pens, *last)


def _set_pens(ruler: Ruler, area: Rect, y_mm: float) -> tuple[Block, ...]:
    """Set the row that a pen fills at each yearly check: as many lines as the card has room for."""
    style = TextStyle(CAPTION_PT, leading_ratio=1.35)
    words_mm = ruler.width_mm(PEN_WORDS, style) + 0.1
    words = set_text(ruler, PEN_WORDS, style, Spot(area.x_mm, y_mm, words_mm), "checked")
    x_mm = words.rect.right_mm + 2.5
    room_mm = area.right_mm - x_mm
    lines = max(_PEN_LINES, int(room_mm / (_PEN_LINE_MM * 1.35)))
    width_mm = (room_mm - (lines - 1) * 3.0) / lines
    base_mm = words.rect.bottom_mm - 0.5
    return (
        words,
        *(
            ShapeBlock(
                "pen-line",
                Rect(x_mm + index * (width_mm + 3.0), base_mm, width_mm, HAIRLINE_MM),
                Shade.BLACK,
            )
            for index in range(lines)
        ),
    )


def _set_last(ruler: Ruler, orientation: str, area: Rect, y_mm: float) -> tuple[Block, ...]:
    words = f"▼ {orientation} ▼"
    width_mm = ruler.width_mm(words, _BOLD) + 0.2
    if not orientation:
        spot = Spot(area.x_mm, y_mm, area.width_mm)
        return (set_text(ruler, NOT_AN_ASSESSMENT, _SMALL, spot, "disclaimer"),)
    edge = set_text(ruler, words, _BOLD, Spot(area.x_mm, y_mm, width_mm), "orientation")
    spot = Spot(edge.rect.right_mm + 3, y_mm, area.right_mm - edge.rect.right_mm - 3)
    note = set_text(ruler, NOT_AN_ASSESSMENT, _SMALL, spot, "disclaimer")
    return (edge, note)
