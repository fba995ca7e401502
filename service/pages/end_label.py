"""Fits an end label: the number as large as the aisle asks, then title, lift and marks."""

from __future__ import annotations

from service.cards.card import EndLabel
from service.cards.words import join_words
from service.errors import DoesNotFitError
from service.geometry import Rect, Size
from service.legibility import LEAST_ANGLE_ARCMIN
from service.pages.label.marks import Scale, Space, set_marks
from service.pages.look import inner_rect
from service.pages.page import Align, Block, Page, SymbolBlock, TextBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_number, set_text
from service.pages.setting.type import LEAST_CAPTION_PT, size_for_distance_pt
from service.pages.symbol import dark_part, set_symbol
from service.printed import to_print
from service.symbols.symbol import Level

_MARGIN_MM = 3.0
"""Text stays this far inside the die line, which may be off by 1.5 mm (common practice)."""
_GAP_MM = 2.0
_SMALLEST = TextStyle(LEAST_CAPTION_PT, leading_ratio=1.15)
_LARGEST_NUMBER_RATIO = 0.42
"""The most of a label's height that the number's line takes."""
_MOST_NUMBER_LINES = 2
_LOW_MM, _MIDDLE_MM = 45.0, 80.0
"""Below these heights a label takes the small or the middle sizes."""
_NUMBER = "number"


def fit_end_label(card: EndLabel, size: Size, ruler: Ruler, *, distance_mm: float) -> Page:
    """Lay an end label out for a reading distance.

    Raises `DoesNotFitError` when the number cannot be read from there on a label of this size, and
    `SymbolError` when the QR symbol cannot be scanned.
    """
    inside = inner_rect(size, _MARGIN_MM)
    scale = _scale_for(size)
    space_mm = min(inside.height_mm * 0.74, size.width_mm * 0.34) + _MARGIN_MM
    symbol = set_symbol(
        card.head,
        right_mm=inside.right_mm,
        top_mm=inside.y_mm,
        space_mm=space_mm,
        level=Level.Q,
    )
    side = _set_side(ruler, card, symbol, scale)
    width_mm = dark_part(symbol).x_mm - _GAP_MM - inside.x_mm
    number = _set_number(
        ruler, card, Rect(inside.x_mm, inside.y_mm, width_mm, size.height_mm), distance_mm
    )
    foot = _set_foot(ruler, card, inside, scale)
    space = Space(
        scale=scale,
        left_mm=inside.x_mm,
        beside_mm=inside.x_mm + width_mm,
        right_mm=inside.right_mm,
        beside_until_mm=bottom_of(side) + 0.5,
        bottom_mm=bottom_of(foot) - foot[0].rect.height_mm - 0.6,
    )
    titled = _set_title(ruler, card, number.rect.bottom_mm, space, scale)
    top_mm = bottom_of((number, *titled)) + 0.8
    marks = set_marks(ruler, card, top_mm, space)
    blocks = (number, symbol, *side, *titled, *marks, *foot)
    return Page(card.kind, card.head.container_number, card.head.title, 1, 1, size, blocks)


def _scale_for(size: Size) -> Scale:
    if size.height_mm < _LOW_MM:
        return Scale(TextStyle(9.0, 700, 1.12), TextStyle(LEAST_CAPTION_PT, 400, 1.12), 7.0)
    if size.height_mm < _MIDDLE_MM:
        return Scale(TextStyle(12.0, 700, 1.15), TextStyle(8.0, 400, 1.15), 9.0)
    return Scale(TextStyle(18.0, 700, 1.15), TextStyle(11.0, 400, 1.2), 13.0)


def _set_number(ruler: Ruler, card: EndLabel, area: Rect, distance_mm: float) -> TextBlock:
    """Set the number at the preferred height or larger, in two lines where it must be.

    Raises:
        DoesNotFitError: When it would be below the least height.
    """
    preferred = size_for_distance_pt(distance_mm)
    least = size_for_distance_pt(distance_mm, angle_arcmin=LEAST_ANGLE_ARCMIN)
    number = card.head.container_number
    sizes = (_largest_size(ruler, number, area, lines, preferred) for lines in (1, 2))
    size_pt = next((size for size in sizes if size >= least), 0.0)
    if not size_pt:
        needed_mm = ruler.width_mm(number, TextStyle(least, weight=800)) / _MOST_NUMBER_LINES
        raise DoesNotFitError(_NUMBER, needed_mm=needed_mm, available_mm=area.width_mm)
    style = TextStyle(size_pt, weight=800, leading_ratio=0.86)
    spot = Spot(area.x_mm, area.y_mm - 0.6, area.width_mm)
    return set_number(ruler, number, style, spot, "container-number")


def _largest_size(ruler: Ruler, number: str, area: Rect, lines: int, preferred_pt: float) -> float:
    """Find the largest type in which the number takes no more than `lines` lines."""
    ceiling_mm = area.height_mm * _LARGEST_NUMBER_RATIO * (1.35 if lines > 1 else 1.0)
    unit = TextStyle(100.0, weight=800, leading_ratio=0.86)
    tallest_pt = 100.0 * ceiling_mm / (unit.leading_mm * lines)
    pieces = _split(ruler, number, unit, lines)
    widest_pt = 100.0 * area.width_mm / max(ruler.width_mm(piece, unit) + 0.1 for piece in pieces)
    return min(tallest_pt, widest_pt, preferred_pt * 1.6)


def _split(ruler: Ruler, number: str, style: TextStyle, lines: int) -> tuple[str, ...]:
    if lines == 1:
        return (number,)
    half_mm = ruler.width_mm(number, style) * 0.62
    return set_number(ruler, number, style, Spot(0, 0, half_mm), "number").lines


def _set_side(ruler: Ruler, card: EndLabel, symbol: SymbolBlock, scale: Scale) -> tuple[Block, ...]:
    """Say below the symbol's clear margin which of how many sides this is, with the letters.

    The line ends below the dark part: centred, the widest letters would come too near the edge.
    """
    style = TextStyle(scale.small.size_pt, 600, 1.1, Align.END)
    words = join_words(
        (
            to_print("{side} of {sides}", side=card.side, sides=card.sides)
            if card.sides > 1
            else "",
            card.head.check_letters,
        )
    )
    rect = symbol.rect
    spot = Spot(rect.x_mm, rect.bottom_mm, dark_part(symbol).right_mm - rect.x_mm)
    return (set_text(ruler, words, style, spot, "side"),)


def _set_foot(ruler: Ruler, card: EndLabel, inside: Rect, scale: Scale) -> tuple[Block, ...]:
    """Set museum, place and count in one line at the bottom."""
    words = join_words((card.head.location or card.head.museum, card.count_words))
    foot = set_text(ruler, words, scale.small, Spot(inside.x_mm, 0, inside.width_mm, 1), "foot")
    return move_blocks((foot,), 0, inside.bottom_mm - foot.rect.height_mm)


def _set_title(
    ruler: Ruler, card: EndLabel, y_mm: float, space: Space, scale: Scale
) -> tuple[Block, ...]:
    """Set the title in as many lines as leave room for a row of marks, two at most."""
    marked = bool(card.marks or card.lift.figure_kg)
    room_mm = space.bottom_mm - y_mm - (scale.mark_mm + 1.0 if marked else 0.0)
    lines = min(2, int(room_mm / scale.title.leading_mm))
    if lines < 1 or not card.head.title:
        return ()
    spot = Spot(space.left_mm, y_mm, space.edge_mm(y_mm) - space.left_mm, lines)
    return (set_text(ruler, card.head.title, scale.title, spot, "title"),)
