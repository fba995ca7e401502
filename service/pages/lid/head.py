"""The head of a lid card: which container, in figures read from a step away, and its symbol."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.cards.parts import Head
from service.cards.words import join_words
from service.geometry import Rect
from service.legibility import LEAST_ANGLE_ARCMIN
from service.pages.look import RULE_MM, Look
from service.pages.page import Align, Block, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.stack import bottom_of
from service.pages.setting.text import Spot, set_number, set_text
from service.pages.setting.type import (
    CAPTION_PT,
    LID_NUMBER_DISTANCE_MM,
    size_for_caps_pt,
    size_for_distance_pt,
)
from service.pages.symbol import dark_part, set_symbol
from service.printed import to_print

_LEAST_TITLE_MM = 42.0
"""A title column narrower than this goes below the number instead of beside it."""
_MOST_NUMBER_RATIO = 0.62


@dataclass(frozen=True, slots=True)
class HeadText:
    """What the head says of this card: lines below the title, and which card of how many."""

    lines: Sequence[str]
    part: str


def set_head(ruler: Ruler, head: Head, text: HeadText, area: Rect, look: Look) -> tuple[Block, ...]:
    """Set the head at the top of `area` and close it with a rule as wide as the area."""
    symbol = set_symbol(head, right_mm=area.right_mm, top_mm=area.y_mm, space_mm=look.symbol_mm)
    dark = dark_part(symbol)
    sealed = _set_revision(ruler, head, text.part, dark)
    width_mm = sealed[0].rect.x_mm - look.gap_mm - area.x_mm
    left = _set_names(ruler, head, text, Rect(area.x_mm, area.y_mm, width_mm, 0), look)
    bottom_mm = max(bottom_of((*left, *sealed)), dark.bottom_mm) + 1.6
    rule = ShapeBlock("rule", Rect(area.x_mm, bottom_mm, area.width_mm, RULE_MM), Shade.BLACK)
    return (*left, symbol, *sealed, rule)


def _set_revision(ruler: Ruler, head: Head, part: str, dark: Rect) -> tuple[Block, ...]:
    """Set revision and check letters left of the symbol, ending with it."""
    style = TextStyle(CAPTION_PT, weight=700, leading_ratio=1.15, align=Align.END)
    words = [
        to_print(
            "r{revision} {check_letters}", revision=head.revision, check_letters=head.check_letters
        ),
        *([part] if part else []),
    ]
    width_mm = max(ruler.width_mm(line, style) for line in words) + 0.2
    x_mm = dark.x_mm - 2.2 - width_mm
    y_mm = dark.bottom_mm - len(words) * style.leading_mm + 0.9
    blocks = []
    for purpose, line in zip(("revision", "part"), words, strict=False):
        blocks.append(set_text(ruler, line, style, Spot(x_mm, y_mm, width_mm), purpose))
        y_mm += style.leading_mm
    return tuple(blocks)


def _set_names(
    ruler: Ruler, head: Head, text: HeadText, area: Rect, look: Look
) -> tuple[Block, ...]:
    style = _number_style(ruler, head.container_number, area.width_mm, look)
    number_mm = min(ruler.width_mm(head.container_number, style) + 0.1, area.width_mm)
    kind_style = TextStyle(CAPTION_PT, weight=600, leading_ratio=1.1)
    kind_mm = min(ruler.width_mm(head.kind_words, kind_style) + 0.2, area.width_mm)
    kind_spot = Spot(area.x_mm, area.y_mm - 0.9, kind_mm)
    kind = set_text(ruler, head.kind_words, kind_style, kind_spot, "kind")
    spot = Spot(area.x_mm, kind.rect.bottom_mm - 0.3, number_mm)
    number = set_number(ruler, head.container_number, style, spot, "container-number")
    beside_mm = number.rect.right_mm + look.gap_mm * 1.6
    if area.right_mm - beside_mm >= _LEAST_TITLE_MM:
        place = Rect(beside_mm, area.y_mm - 0.9, area.right_mm - beside_mm, 0)
    else:
        place = Rect(area.x_mm, number.rect.bottom_mm, area.width_mm, 0)
    return (kind, number, *_set_title(ruler, head, text, place, look))


def _set_title(
    ruler: Ruler, head: Head, text: HeadText, place: Rect, look: Look
) -> tuple[Block, ...]:
    style = TextStyle(look.title_pt, weight=700, leading_ratio=1.15)
    blocks: list[Block] = []
    y_mm = place.y_mm
    if head.title:
        spot = Spot(place.x_mm, y_mm, place.width_mm, 2)
        blocks.append(set_text(ruler, head.title, style, spot, "title"))
        y_mm = bottom_of(blocks) + 0.5
    small = TextStyle(CAPTION_PT, leading_ratio=1.22)
    house = join_words((head.museum, head.location))
    for purpose, words in (*(("count", line) for line in text.lines), ("museum", house)):
        if words:
            block = set_text(
                ruler, words, small, Spot(place.x_mm, y_mm, place.width_mm, 2), purpose
            )
            blocks.append(block)
            y_mm = block.rect.bottom_mm
    return tuple(blocks)


def _number_style(ruler: Ruler, number: str, width_mm: float, look: Look) -> TextStyle:
    """Take the preferred size where the number fits, else shrink down to the least."""
    preferred = size_for_caps_pt(look.number_caps_mm)
    least = size_for_distance_pt(LID_NUMBER_DISTANCE_MM, angle_arcmin=LEAST_ANGLE_ARCMIN)
    style = TextStyle(preferred, weight=800, leading_ratio=0.86)
    natural_mm = ruler.width_mm(number, style)
    wanted_mm = width_mm * _MOST_NUMBER_RATIO
    if natural_mm <= wanted_mm:
        return style
    return TextStyle(max(least, preferred * wanted_mm / natural_mm), weight=800, leading_ratio=0.86)
