"""Fits the swap list: a row a card, old and new side by side, and boxes to tick."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.cards.changes.change import Urgency
from service.cards.swap_list import URGENCY_WORDS, SwapList, SwapRow
from service.cards.words import count, join_words
from service.errors import DoesNotFitError
from service.geometry import Rect, Size
from service.pages.look import HAIRLINE_MM, RULE_MM, inner_rect
from service.pages.page import Align, Block, Page, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_number, set_text
from service.pages.setting.type import CAPTION_PT

KIND = "swap-list"

_MARGIN_MM = 12.0
_GAP_MM = 4.0
_NUMBER_MM = 46.0
_TICKS_MM = 42.0
_TICK_BOX_MM = 5.0
_PADDING_MM = 2.2
_ROW = "row"

_HEAD = TextStyle(20.0, weight=800, leading_ratio=1.1)
_NUMBER = TextStyle(15.0, weight=800, leading_ratio=1.1)
_CARD = TextStyle(10.5, weight=700, leading_ratio=1.2)
_BODY = TextStyle(max(CAPTION_PT, 9.0), leading_ratio=1.28)
_BOLD = TextStyle(max(CAPTION_PT, 9.0), weight=700, leading_ratio=1.28)
_LABEL = TextStyle(CAPTION_PT, weight=600, leading_ratio=1.2)

_HOW = (
    (
        "Take the old card off. A label that would tear the board is covered wholly by one that is"
        " not smaller, or struck through and dated."
    ),
    "Put the new one on and scan card and container: a card on the wrong box is caught.",
)


@dataclass(frozen=True, slots=True)
class _Row:
    blocks: tuple[Block, ...]
    height_mm: float


def fit_swap_list(swap_list: SwapList, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay the list out; no row is divided, and nothing is shortened.

    Raises `DoesNotFitError` when one row is higher than a page.
    """
    inside = inner_rect(size, _MARGIN_MM)
    rows = [_set_row(ruler, row, inside) for row in swap_list.rows]
    foot = _set_foot(ruler, inside)
    top_mm = bottom_of(_set_head(ruler, swap_list, inside, (88, 88)))
    room_mm = min(block.rect.y_mm for block in foot) - top_mm - 2.0
    shared = _share(rows, room_mm)
    pages = []
    for number, some in enumerate(shared, start=1):
        head = _set_head(ruler, swap_list, inside, (number, len(shared)))
        blocks = (*head, *_stack(some, top_mm), *foot)
        title = f"Swap list, {swap_list.made}"
        pages.append(Page(KIND, "swap list", title, number, len(shared), size, blocks))
    return tuple(pages)


def _share(rows: Sequence[_Row], room_mm: float) -> list[list[_Row]]:
    """Fill page after page.

    Raises:
        DoesNotFitError: When a row is higher than a page.
    """
    pages: list[list[_Row]] = [[]]
    left_mm = room_mm
    for row in rows:
        if row.height_mm > room_mm:
            raise DoesNotFitError(_ROW, needed_mm=row.height_mm, available_mm=room_mm)
        if row.height_mm > left_mm:
            pages.append([])
            left_mm = room_mm
        pages[-1].append(row)
        left_mm -= row.height_mm
    return pages


def _stack(rows: Sequence[_Row], top_mm: float) -> list[Block]:
    blocks: list[Block] = []
    for row in rows:
        blocks += move_blocks(row.blocks, 0, top_mm)
        top_mm += row.height_mm
    return blocks


def _set_head(
    ruler: Ruler, swap_list: SwapList, inside: Rect, numbering: tuple[int, int]
) -> tuple[Block, ...]:
    number, of = numbering
    half_mm = inside.width_mm / 2
    title = set_text(ruler, "Swap list", _HEAD, Spot(inside.x_mm, inside.y_mm, half_mm), "heading")
    end = TextStyle(_BODY.size_pt, leading_ratio=1.28, align=Align.END)
    page = join_words((count(len(swap_list.rows), "card"), f"page {number} of {of}"))
    spot = Spot(inside.x_mm + half_mm, inside.y_mm + 2.6, half_mm)
    said = join_words((swap_list.museum, swap_list.made))
    top_mm = title.rect.bottom_mm + 0.6
    blocks: list[Block] = [title, set_text(ruler, page, end, spot, "page")]
    blocks.append(set_text(ruler, said, _BODY, Spot(inside.x_mm, top_mm, inside.width_mm), "made"))
    ticks_mm = inside.right_mm - _TICKS_MM
    labels = (
        ("Container, place", inside.x_mm, _NUMBER_MM),
        ("Old card, new card, and why", inside.x_mm + _NUMBER_MM + _GAP_MM, 80.0),
        ("Old off", ticks_mm, 12.0),
        ("New on", ticks_mm + 13.0, 12.0),
        ("Initials", ticks_mm + 27.0, 15.0),
    )
    top_mm = bottom_of(blocks) + 2.4
    for words, x_mm, width_mm in labels:
        blocks.append(set_text(ruler, words, _LABEL, Spot(x_mm, top_mm, width_mm), "label"))
    rule = Rect(inside.x_mm, bottom_of(blocks) + 0.8, inside.width_mm, RULE_MM)
    return (*blocks, ShapeBlock("rule", rule, Shade.BLACK))


def _set_foot(ruler: Ruler, inside: Rect) -> tuple[Block, ...]:
    rule = ShapeBlock("rule", Rect(inside.x_mm, 0, inside.width_mm, HAIRLINE_MM), Shade.BLACK)
    blocks: list[Block] = [rule]
    for words in _HOW:
        spot = Spot(inside.x_mm, bottom_of(blocks) + 0.8, inside.width_mm)
        blocks.append(set_text(ruler, words, _BODY, spot, "how"))
    return move_blocks(tuple(blocks), 0, inside.bottom_mm - bottom_of(blocks))


def _set_row(ruler: Ruler, row: SwapRow, inside: Rect) -> _Row:
    """Set one card from y = 0; a rule below parts it from the next one."""
    y_mm = _PADDING_MM
    spot = Spot(inside.x_mm, y_mm, _NUMBER_MM)
    number = set_number(ruler, row.container_number, _NUMBER, spot, "container-number")
    blocks: list[Block] = [number]
    if row.location:
        below = Spot(inside.x_mm, number.rect.bottom_mm + 0.6, _NUMBER_MM)
        words = join_words(row.location, between=", ")
        blocks.append(set_text(ruler, words, _BODY, below, "location"))
    blocks += _set_words(ruler, row, inside, y_mm)
    blocks += _set_ticks(inside, y_mm)
    bottom_mm = bottom_of(blocks) + _PADDING_MM
    rule = Rect(inside.x_mm, bottom_mm, inside.width_mm, HAIRLINE_MM)
    blocks.append(ShapeBlock("row-rule", rule, Shade.GREY))
    return _Row(tuple(blocks), bottom_mm + HAIRLINE_MM)


def _set_words(ruler: Ruler, row: SwapRow, inside: Rect, y_mm: float) -> list[Block]:
    x_mm = inside.x_mm + _NUMBER_MM + _GAP_MM
    width_mm = inside.right_mm - _TICKS_MM - _GAP_MM - x_mm
    is_first = row.urgency is Urgency.HAZARD_OR_LIFT
    lines = [
        ("card", row.card, _CARD),
        ("versions", f"{row.old}   \N{RIGHTWARDS ARROW}   {row.new}", _CARD),
        ("urgency", URGENCY_WORDS[row.urgency], _BOLD if is_first else _BODY),
        *(("reason", reason, _BODY) for reason in row.reasons),
        ("where", f"Where: {row.where}", _BODY),
    ]
    blocks: list[Block] = []
    for purpose, words, style in lines:
        block = set_text(ruler, words, style, Spot(x_mm, y_mm, width_mm), purpose)
        blocks.append(block)
        y_mm = block.rect.bottom_mm + (0.9 if style is _CARD else 0.3)
    return blocks


def _set_ticks(inside: Rect, y_mm: float) -> list[Block]:
    left_mm = inside.right_mm - _TICKS_MM
    boxes: list[Block] = [
        ShapeBlock("tick-box", Rect(x_mm, y_mm, _TICK_BOX_MM, _TICK_BOX_MM), outline_mm=0.3)
        for x_mm in (left_mm, left_mm + 13.0)
    ]
    line = Rect(left_mm + 27.0, y_mm + _TICK_BOX_MM, _TICKS_MM - 27.0, HAIRLINE_MM)
    return [*boxes, ShapeBlock("line", line, Shade.BLACK)]
