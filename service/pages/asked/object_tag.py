"""Fits an object tag: number and name, what can hurt, whom to ask; as many tags as that needs."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass

from service.cards.card import ObjectTag
from service.cards.second.phrases import ASK_FIRST
from service.cards.words import join_words
from service.errors import DoesNotFitError, SymbolError
from service.geometry import Point, Rect, Size
from service.handling.lifting import LiftAdvice
from service.pages.asked.tags import SMALL, pair_rows, set_hole, set_warning
from service.pages.lid.foot import NOBODY
from service.pages.page import Block, Page, SymbolBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.rows import Row, share_rows, stack_rows
from service.pages.setting.second import set_beside, set_second
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_number, set_text
from service.pages.setting.type import LEAST_CAPTION_PT
from service.pages.symbol import dark_part, set_symbol
from service.printed import to_print

HOLE_MM = 4.0
"""Diameter of the hole, for a narrow cotton tape (common practice, no source)."""
_MARGIN_MM = 2.6
"""Cut by hand: the knife may be off by a millimetre (common practice, no source)."""
_HOLE_COLUMN_MM = 9.0
_GAP_MM = 2.0
_LOW_MM = 40.0
_SYMBOLS_MM, _LARGE_SYMBOLS_MM = (18.0, 19.5), (20.5, 24.0, 28.0, 32.0)
"""Room for the symbol, its clear margin included; the first that can be read is taken."""
_MARK_MM, _LARGE_MARK_MM = 5.6, 7.5
_NUMBER_SIZES_PT = (16.0, 14.0, 12.5, 11.0, 9.5)
_LEAST_COLUMN_MM = 34.0
_TAG = "object tag"

_NAME = TextStyle(8.4, weight=600, leading_ratio=1.15)
_BOLD = TextStyle(LEAST_CAPTION_PT, weight=700, leading_ratio=1.15)


@dataclass(frozen=True, slots=True)
class _Space:
    """What stands on every tag of an object, and the room below it for hazards."""

    blocks: tuple[Block, ...]
    room: Rect


def fit_object_tag(card: ObjectTag, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay a tag out; hazards that have no room go on on a further tag.

    Raises:
        DoesNotFitError: When even one hazard has no room.
        SymbolError: When the QR symbol cannot be read at that size.
    """
    large = size.height_mm > _LOW_MM
    space = _make_space(ruler, card, size, to_print("tag {number} of {of}", number=8, of=8))
    if space.room.height_mm < 0:
        needed_mm, available_mm = size.height_mm - space.room.height_mm, size.height_mm
        raise DoesNotFitError(_TAG, needed_mm=needed_mm, available_mm=available_mm)
    mark_mm = _LARGE_MARK_MM if large else _MARK_MM
    columns = max(1, int((space.room.width_mm + _GAP_MM) / (_LEAST_COLUMN_MM + _GAP_MM)))
    step_mm = (space.room.width_mm + _GAP_MM) / columns
    marked = [(warn, mark_mm) for warn in card.hazards]
    marked += [(warn, _MARK_MM) for warn in card.cautions]
    rows = [
        set_warning(ruler, warn, step_mm - _GAP_MM, side_mm, card.head.second)
        for warn, side_mm in marked
    ]
    faces = share_rows(list(pair_rows(rows, columns, step_mm)), space.room.height_mm)
    return tuple(
        _draw(ruler, card, size, rows_here, (number, len(faces)))
        for number, rows_here in enumerate(faces, start=1)
    )


def _draw(
    ruler: Ruler, card: ObjectTag, size: Size, rows: Sequence[Row], numbering: tuple[int, int]
) -> Page:
    number, of = numbering
    space = _make_space(
        ruler, card, size, to_print("tag {number} of {of}", number=number, of=of) if of > 1 else ""
    )
    blocks = (*space.blocks, *stack_rows(rows, space.room.x_mm, space.room.y_mm))
    return Page(card.kind, card.object_number, card.title, number, of, size, blocks)


def _make_space(ruler: Ruler, card: ObjectTag, size: Size, part: str) -> _Space:
    left_mm = _HOLE_COLUMN_MM
    right_mm = size.width_mm - _MARGIN_MM
    symbol = _set_symbol(card, size)
    dark = dark_part(symbol)
    names = _set_names(ruler, card, Rect(left_mm, _MARGIN_MM, dark.x_mm - _GAP_MM - left_mm, 0))
    foot = _set_foot(ruler, card, Rect(left_mm, 0, right_mm - left_mm, 0), part)
    foot = move_blocks(foot, 0, size.height_mm - _MARGIN_MM - bottom_of(foot))
    top_mm = max(bottom_of(names) + 0.6, symbol.rect.bottom_mm)
    room = Rect(left_mm, top_mm, right_mm - left_mm, foot[0].rect.y_mm - 0.4 - top_mm)
    hole = set_hole(Point(_HOLE_COLUMN_MM / 2, size.height_mm / 2), HOLE_MM)
    return _Space((hole, *names, symbol, *foot), room)


def _set_symbol(card: ObjectTag, size: Size) -> SymbolBlock:
    """Set the symbol small, or as large as a long address needs where the tag has room for it.

    Raises:
        SymbolError: When none of the sizes will do.
    """
    right_mm = size.width_mm - _MARGIN_MM
    spaces = _LARGE_SYMBOLS_MM if size.height_mm > _LOW_MM else _SYMBOLS_MM
    for space_mm in spaces[:-1]:
        with suppress(SymbolError):
            return set_symbol(card.head, right_mm=right_mm, top_mm=_MARGIN_MM, space_mm=space_mm)
    return set_symbol(card.head, right_mm=right_mm, top_mm=_MARGIN_MM, space_mm=spaces[-1])


def _set_names(ruler: Ruler, card: ObjectTag, area: Rect) -> tuple[Block, ...]:
    """Set number, name, former numbers and weight; numbers are never shortened."""
    sizes = [TextStyle(size_pt, weight=800, leading_ratio=1.0) for size_pt in _NUMBER_SIZES_PT]
    fitting = (one for one in sizes if ruler.width_mm(card.object_number, one) <= area.width_mm)
    style = next(fitting, sizes[-1])
    spot = Spot(area.x_mm, area.y_mm - 0.8, area.width_mm)
    blocks: list[Block] = [set_number(ruler, card.object_number, style, spot, "object-number")]
    below = Spot(area.x_mm, bottom_of(blocks) + 0.4, area.width_mm, 2)
    blocks.append(set_text(ruler, card.title, _NAME, below, "title"))
    if card.former_numbers:
        words = to_print("formerly {former_numbers}", former_numbers=", ".join(card.former_numbers))
        spot = Spot(area.x_mm, bottom_of(blocks) + 0.3, area.width_mm)
        blocks.append(set_number(ruler, words, SMALL, spot, "former-numbers"))
    lift = _write_lift(card.lift)
    if lift:
        spot = Spot(area.x_mm, bottom_of(blocks) + 0.3, area.width_mm)
        blocks.append(set_text(ruler, lift, _BOLD, spot, "weight"))
        again = Spot(area.x_mm, bottom_of(blocks), area.width_mm)
        said = (card.lift.qualifier, card.lift.advice)
        blocks += set_second(ruler, card.head.second, said, again)
    return tuple(blocks)


def _set_foot(ruler: Ruler, card: ObjectTag, area: Rect, part: str) -> tuple[Block, ...]:
    """Set whom to ask, and whose object it is."""
    spot = Spot(area.x_mm, area.y_mm, area.width_mm)
    asked = to_print("Ask first: {asked}", asked=card.head.questions or NOBODY)
    ask = set_text(ruler, asked, _BOLD, spot, "questions")
    said = set_beside(ruler, card.head.second, ASK_FIRST, ask)
    below = Spot(area.x_mm, bottom_of((ask, *said)), area.width_mm)
    words = join_words((card.head.museum, part, card.head.check_letters))
    return (ask, *said, set_text(ruler, words, SMALL, below, "museum"))


def _write_lift(lift: LiftAdvice) -> str:
    weight = join_words(
        (
            to_print("{figure_kg} kg", figure_kg=lift.figure_kg) if lift.figure_kg else "",
            lift.qualifier,
        )
    )
    return join_words((weight, lift.advice), between=". ")
