"""Sets one row of the swap list: which card of which container, old and new, why, and its boxes.

A bar beside the row tells how urgent it is on any printer: black for hazard or lift, framed for
contents, none for wording. The words say the same.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from service.cards.changes.change import Urgency
from service.cards.swap_list import NOT_PACKED, URGENCY_WORDS, SwapRow
from service.cards.words import join_words
from service.errors import DoesNotFitError
from service.geometry import Rect
from service.pages.look import HAIRLINE_MM
from service.pages.page import Block, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.stack import bottom_of
from service.pages.setting.text import Spot, break_number, set_number, set_text
from service.pages.setting.type import CAPTION_PT
from service.printed import to_print

NUMBER_MM = 46.0
GAP_MM = 4.0
TICKS_MM = 42.0
TICK_STEPS_MM = (0.0, 13.0, 27.0)
"""Where the boxes for old and new and the line for initials begin, in the last column."""
_TICK_BOX_MM = 5.0
_PADDING_MM = 2.2
_BAR_MM = 2.0
_BAR_OUTSIDE_MM = 4.0
_OUTLINE_MM = 0.3
_NUMBER_LINES = 2

_NUMBERS = tuple(
    TextStyle(size_pt, weight=800, leading_ratio=1.1) for size_pt in (15.0, 13.0, 11.0)
)
_CARD = TextStyle(10.5, weight=700, leading_ratio=1.2)
_BODY = TextStyle(max(CAPTION_PT, 9.0), leading_ratio=1.28)
_BOLD = replace(_BODY, weight=700)


@dataclass(frozen=True, slots=True)
class RowSet:
    """A row set from y = 0, with the rule that parts it from the next one."""

    blocks: tuple[Block, ...]
    height_mm: float


def set_rows(ruler: Ruler, row: SwapRow, inside: Rect, *, room_mm: float) -> Iterator[RowSet]:
    """Set a card as one row; one with more reasons than a page holds as several rows.

    Each of these is whole and names the card again; the boxes to tick stand in the first.

    Raises:
        DoesNotFitError: When one reason is higher than a page.
    """
    parts = _divide(ruler, _printable(ruler, row), inside, room_mm)
    for number, part in enumerate(parts, start=1):
        card = (
            to_print(
                "{card} (part {number} of {of})",
                card=part.card,
                number=number,
                of=len(parts),
            )
            if len(parts) > 1
            else part.card
        )
        yield _set_row(ruler, replace(part, card=card), inside, has_ticks=number == 1)


def spell(ruler: Ruler, text: str) -> str:
    """Write each sign that no shipped font holds as its code, as cards do."""
    missing = {ord(sign): f"[U+{ord(sign):04X}]" for sign in ruler.missing_characters(text)}
    return text.translate(missing)


def _printable(ruler: Ruler, row: SwapRow) -> SwapRow:
    return replace(
        row,
        container_number=spell(ruler, row.container_number),
        object_number=spell(ruler, row.object_number),
        card=spell(ruler, row.card),
        location=tuple(spell(ruler, part) for part in row.location),
        reasons=tuple(spell(ruler, reason) for reason in row.reasons),
    )


def _divide(ruler: Ruler, row: SwapRow, inside: Rect, room_mm: float) -> tuple[SwapRow, ...]:
    """Halve the reasons of a row until each part stands on a page.

    Raises:
        DoesNotFitError: When one reason is higher than a page.
    """
    # The longest name a part can get, so that it fits with whatever number it has.
    longest = replace(
        row, card=to_print("{card} (part {number} of {of})", card=row.card, number=88, of=88)
    )
    height_mm = _set_row(ruler, longest, inside, has_ticks=True).height_mm
    if height_mm <= room_mm:
        return (row,)
    middle = len(row.reasons) // 2
    if not middle:
        message = "row"
        raise DoesNotFitError(message, needed_mm=height_mm, available_mm=room_mm)
    halves = (row.reasons[:middle], row.reasons[middle:])
    return tuple(
        part
        for reasons in halves
        for part in _divide(ruler, replace(row, reasons=reasons), inside, room_mm)
    )


def _set_row(ruler: Ruler, row: SwapRow, inside: Rect, *, has_ticks: bool) -> RowSet:
    blocks = [*_set_place(ruler, row, inside), *_set_words(ruler, row, inside)]
    blocks += _set_ticks(inside) if has_ticks else []
    blocks += _set_bar(row.urgency, inside, bottom_of(blocks))
    rule = Rect(inside.x_mm, bottom_of(blocks) + _PADDING_MM, inside.width_mm, HAIRLINE_MM)
    blocks.append(ShapeBlock("row-rule", rule, Shade.GREY))
    return RowSet(tuple(blocks), rule.bottom_mm)


def _set_place(ruler: Ruler, row: SwapRow, inside: Rect) -> list[Block]:
    is_packed = bool(row.container_number)
    which = row.container_number if is_packed else row.object_number
    spot = Spot(inside.x_mm, _PADDING_MM, NUMBER_MM)
    purpose = "container-number" if is_packed else "object-number"
    number = set_number(ruler, which, _number_style(ruler, which), spot, purpose)
    words = join_words(row.location, between=", ") if is_packed else NOT_PACKED
    below = Spot(inside.x_mm, number.rect.bottom_mm + 0.6, NUMBER_MM)
    return [number, *([set_text(ruler, words, _BODY, below, "location")] if words else [])]


def _number_style(ruler: Ruler, number: str) -> TextStyle:
    """Choose the largest type that takes a number in two lines, else the smallest."""
    fitting = (
        style
        for style in _NUMBERS
        if len(break_number(ruler, number, style, width_mm=NUMBER_MM)) <= _NUMBER_LINES
    )
    return next(fitting, _NUMBERS[-1])


def _set_words(ruler: Ruler, row: SwapRow, inside: Rect) -> list[Block]:
    x_mm = inside.x_mm + NUMBER_MM + GAP_MM
    width_mm = inside.right_mm - TICKS_MM - GAP_MM - x_mm
    is_first = row.urgency is Urgency.HAZARD_OR_LIFT
    lines = [
        ("card", row.card, _CARD),
        ("versions", f"{row.old}   \N{RIGHTWARDS ARROW}   {row.new}", _CARD),
        ("urgency", URGENCY_WORDS[row.urgency], _BOLD if is_first else _BODY),
        *(("reason", reason, _BODY) for reason in row.reasons),
        ("where", to_print("Where: {where}", where=row.where), _BODY),
    ]
    blocks: list[Block] = []
    y_mm = _PADDING_MM
    for purpose, words, style in lines:
        block = set_text(ruler, words, style, Spot(x_mm, y_mm, width_mm), purpose)
        blocks.append(block)
        y_mm = block.rect.bottom_mm + (0.9 if style is _CARD else 0.3)
    return blocks


def _set_ticks(inside: Rect) -> list[Block]:
    old_mm, new_mm, initials_mm = (inside.right_mm - TICKS_MM + step for step in TICK_STEPS_MM)
    boxes: list[Block] = [
        ShapeBlock(
            "tick-box",
            Rect(x_mm, _PADDING_MM, _TICK_BOX_MM, _TICK_BOX_MM),
            outline_mm=_OUTLINE_MM,
        )
        for x_mm in (old_mm, new_mm)
    ]
    width_mm = inside.right_mm - initials_mm
    line = Rect(initials_mm, _PADDING_MM + _TICK_BOX_MM, width_mm, HAIRLINE_MM)
    return [*boxes, ShapeBlock("line", line, Shade.BLACK)]


def _set_bar(urgency: Urgency, inside: Rect, bottom_mm: float) -> list[Block]:
    rect = Rect(inside.x_mm - _BAR_OUTSIDE_MM, _PADDING_MM, _BAR_MM, bottom_mm - _PADDING_MM)
    if urgency is Urgency.HAZARD_OR_LIFT:
        return [ShapeBlock("urgency-bar", rect, Shade.BLACK)]
    if urgency is Urgency.CONTENTS:
        return [ShapeBlock("urgency-bar", rect, outline_mm=_OUTLINE_MM)]
    return []
