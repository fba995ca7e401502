"""Sets one mark of the specimen: drawn in three sizes, and beside it all that is said of it."""

from __future__ import annotations

from service.cards.words import join_words
from service.geometry import Rect
from service.pages.page import Block, MarkBlock, Shade, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.text import Spot, set_text
from service.pages.setting.type import CAPTION_PT
from service.printed import to_print
from service.symbols.pictograms import OWN, Pictogram, Status

SIZES_MM = (20.0, 12.0, 8.0)
"""How large a mark is drawn: for a door or shelf, for a lid, and the least size of all."""
_GAP_MM = 3.0
TEXT_X_MM = sum(SIZES_MM) + _GAP_MM * (len(SIZES_MM) - 1) + 4.0
"""Where the words begin."""

_WORDS = TextStyle(11.0, weight=700, leading_ratio=1.15)
_MEANING = TextStyle(CAPTION_PT, leading_ratio=1.22)
_FACTS = TextStyle(CAPTION_PT, leading_ratio=1.22, shade=Shade.GREY)


def set_cell(ruler: Ruler, pictogram: Pictogram, *, width_mm: float) -> tuple[Block, ...]:
    """Set a mark from the corner (0, 0); nothing that is said of it is shortened."""
    blocks: list[Block] = [*_set_marks(pictogram)]
    form = (
        to_print("own form")
        if pictogram.geometry == OWN
        else to_print("after {geometry}", geometry=pictogram.geometry)
    )
    status = to_print("draft") if pictogram.status is Status.DRAFT else to_print("read by staff")
    facts = join_words((form, status))
    y_mm = 0.0
    lines = (
        ("words", pictogram.words, _WORDS),
        ("meaning", pictogram.meaning, _MEANING),
        ("facts", facts, _FACTS),
    )
    for purpose, text, style in lines:
        spot = Spot(TEXT_X_MM, y_mm, width_mm - TEXT_X_MM)
        blocks.append(set_text(ruler, text, style, spot, purpose))
        y_mm = blocks[-1].rect.bottom_mm + 0.5
    return tuple(blocks)


def _set_marks(pictogram: Pictogram) -> list[MarkBlock]:
    """Stand the three sizes on one line, the largest first."""
    marks, x_mm = [], 0.0
    for size_mm in SIZES_MM:
        rect = Rect(x_mm, SIZES_MM[0] - size_mm, size_mm, size_mm)
        marks.append(MarkBlock("mark", rect, pictogram.code, pictogram.words))
        x_mm += size_mm + _GAP_MM
    return marks
