"""Fits a shoulder tag: a narrow strip that looks out from the rail, its number read from there."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from service.cards.card import ShoulderTag
from service.cards.parts import CardObject
from service.cards.words import join_words
from service.errors import DoesNotFitError
from service.geometry import Point, Rect, Size
from service.legibility import LEAST_ANGLE_ARCMIN, PREFERRED_ANGLE_ARCMIN
from service.pages.asked.tags import SMALL, set_hole, set_warning
from service.pages.look import RULE_MM
from service.pages.page import Align, Block, Page, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.rows import Row, share_rows, stack_rows
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, break_number, longest_piece_mm, set_number, set_text
from service.pages.setting.type import (
    CAPTION_PT,
    LEAST_OBJECT_NUMBER_PT,
    size_for_distance_pt,
)
from service.printed import to_print

HOLE_MM = 5.0
"""Diameter of the hole, for the tape and a common paper punch (common practice, no source)."""
RAIL_DISTANCE_MM = 1000.0
"""From where one looks along a rail (common practice, no source)."""
_MARGIN_MM = 3.0
_HOLE_TOP_MM = 4.0
_TOP_MM = _HOLE_TOP_MM + HOLE_MM + 2.5
_MARK_MM = 8.0
_MOST_NUMBER_LINES = 4
_MOST_TITLE_LINES = 4
_STEPS = 12
_NUMBER = "number"

_OBJECT = TextStyle(LEAST_OBJECT_NUMBER_PT, weight=700, leading_ratio=1.12)
_TITLE = TextStyle(CAPTION_PT, leading_ratio=1.15)


def fit_shoulder_tag(card: ShoulderTag, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay a shoulder tag out; what has no room goes on on a further tag.

    Raises:
        DoesNotFitError: When the number cannot be read from the rail, or a row has no room.
    """
    area = Rect(_MARGIN_MM, _TOP_MM, size.width_mm - 2 * _MARGIN_MM, 0)
    above = _set_number(ruler, card, area)
    foot = _set_foot(ruler, card, area, size, to_print("tag {number} of {of}", number=8, of=8))
    room_mm = foot[0].rect.y_mm - 1.0 - bottom_of(above) - 1.6
    faces = share_rows(list(_make_rows(ruler, card, area.width_mm)), max(0.0, room_mm))
    return tuple(
        _draw(ruler, card, size, rows, (number, len(faces)))
        for number, rows in enumerate(faces, start=1)
    )


def _draw(
    ruler: Ruler, card: ShoulderTag, size: Size, rows: Sequence[Row], numbering: tuple[int, int]
) -> Page:
    number, of = numbering
    area = Rect(_MARGIN_MM, _TOP_MM, size.width_mm - 2 * _MARGIN_MM, 0)
    hole = set_hole(Point(size.width_mm / 2, _HOLE_TOP_MM + HOLE_MM / 2), HOLE_MM)
    above = _set_number(ruler, card, area)
    placed = stack_rows(rows, area.x_mm, bottom_of(above) + 1.6)
    foot = _set_foot(
        ruler,
        card,
        area,
        size,
        to_print("tag {number} of {of}", number=number, of=of) if of > 1 else "",
    )
    head = card.head
    blocks = (hole, *above, *placed, *foot)
    return Page(card.kind, head.container_number, head.title, number, of, size, blocks)


def _set_number(ruler: Ruler, card: ShoulderTag, area: Rect) -> tuple[Block, ...]:
    """Set the number in the largest type that needs no more than a few lines, and a rule below.

    Raises:
        DoesNotFitError: When it would be too small to be read from the rail.
    """
    number = card.head.container_number
    large = size_for_distance_pt(RAIL_DISTANCE_MM, angle_arcmin=2 * PREFERRED_ANGLE_ARCMIN)
    least = size_for_distance_pt(RAIL_DISTANCE_MM, angle_arcmin=LEAST_ANGLE_ARCMIN)
    sizes = (large - (large - least) * step / _STEPS for step in range(_STEPS + 1))
    styles = (TextStyle(size_pt, weight=800, leading_ratio=0.92) for size_pt in sizes)
    style = next((one for one in styles if _is_whole(ruler, number, one, area.width_mm)), None)
    if style is None:
        smallest = TextStyle(least, weight=800)
        shared_mm = ruler.width_mm(number, smallest) / _MOST_NUMBER_LINES
        needed_mm = max(longest_piece_mm(ruler, [number], smallest), shared_mm)
        raise DoesNotFitError(_NUMBER, needed_mm=needed_mm, available_mm=area.width_mm)
    spot = Spot(area.x_mm, area.y_mm, area.width_mm)
    block = set_number(ruler, number, style, spot, "container-number")
    rule = Rect(area.x_mm, block.rect.bottom_mm + 1.2, area.width_mm, RULE_MM)
    return (block, ShapeBlock("rule", rule, Shade.BLACK))


def _is_whole(ruler: Ruler, number: str, style: TextStyle, width_mm: float) -> bool:
    """Tell whether a number takes few lines and breaks only where numbers may."""
    lines = break_number(ruler, number, style, width_mm=width_mm)
    at_signs = all(line.endswith((".", "-", "/")) for line in lines[:-1])
    return at_signs and len(lines) <= _MOST_NUMBER_LINES


def _make_rows(ruler: Ruler, card: ShoulderTag, width_mm: float) -> Iterator[Row]:
    """Give hazards first, then each object with its short name."""
    for warn in card.hazards:
        yield set_warning(ruler, warn, width_mm, _MARK_MM, card.head.second)
    for item in card.objects:
        yield _set_object(ruler, item, width_mm)


def _set_object(ruler: Ruler, item: CardObject, width_mm: float) -> Row:
    number = set_number(ruler, item.object_number, _OBJECT, Spot(0, 1.2, width_mm), "object-number")
    spot = Spot(0, number.rect.bottom_mm + 0.2, width_mm, _MOST_TITLE_LINES)
    title = set_text(ruler, item.title, _TITLE, spot, "title")
    return Row((number, title), title.rect.bottom_mm + 1.0)


def _set_foot(
    ruler: Ruler, card: ShoulderTag, area: Rect, size: Size, part: str
) -> tuple[Block, ...]:
    style = TextStyle(SMALL.size_pt, 600, SMALL.leading_ratio, Align.START)
    words = join_words((part, card.head.check_letters))
    foot = set_text(ruler, words, style, Spot(area.x_mm, 0, area.width_mm), "part")
    return move_blocks((foot,), 0, size.height_mm - _MARGIN_MM - foot.rect.height_mm)
