"""Fits the swap list: a row a card, old and new side by side, and boxes to tick."""

from __future__ import annotations

from collections.abc import Sequence

from service.cards.swap_list import SwapList
from service.cards.words import count, join_words
from service.geometry import Rect, Size
from service.pages.look import HAIRLINE_MM, RULE_MM, inner_rect
from service.pages.page import Align, Block, Page, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_text
from service.pages.setting.type import CAPTION_PT
from service.pages.swap_list.row import (
    GAP_MM,
    NUMBER_MM,
    TICK_STEPS_MM,
    TICKS_MM,
    RowSet,
    set_rows,
    spell,
)
from service.printed import to_print

KIND = "swap-list"

_MARGIN_MM = 12.0

_HEAD = TextStyle(20.0, weight=800, leading_ratio=1.1)
_BODY = TextStyle(max(CAPTION_PT, 9.0), leading_ratio=1.28)
_LABEL = TextStyle(CAPTION_PT, weight=600, leading_ratio=1.2)

_HIDDEN = to_print("Places are hidden: the list goes by container number.")
_HOW = (
    to_print(
        "Take the old card off. A label that would tear the board is covered wholly by one that is"
        " not smaller, or struck through and dated."
    ),
    to_print("Put the new one on and scan card and container: a card on the wrong box is caught."),
)


def fit_swap_list(swap_list: SwapList, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay the list out; no row is divided by a page, and nothing is shortened.

    Raises `DoesNotFitError` when one reason is higher than a page.
    """
    inside = inner_rect(size, _MARGIN_MM)
    foot = _set_foot(ruler, inside)
    top_mm = bottom_of(_set_head(ruler, swap_list, inside, (88, 88)))
    room_mm = min(block.rect.y_mm for block in foot) - top_mm - 2.0
    rows = [
        part for row in swap_list.rows for part in set_rows(ruler, row, inside, room_mm=room_mm)
    ]
    shared = _share(rows, room_mm)
    pages = []
    for number, some in enumerate(shared, start=1):
        head = _set_head(ruler, swap_list, inside, (number, len(shared)))
        blocks = (*head, *_stack(some, top_mm), *foot)
        title = to_print("Swap list, {made}", made=swap_list.made)
        pages.append(Page(KIND, "swap list", title, number, len(shared), size, blocks))
    return tuple(pages)


def _share(rows: Sequence[RowSet], room_mm: float) -> list[list[RowSet]]:
    """Fill page after page; every row is lower than a page."""
    pages: list[list[RowSet]] = [[]]
    left_mm = room_mm
    for row in rows:
        if row.height_mm > left_mm:
            pages.append([])
            left_mm = room_mm
        pages[-1].append(row)
        left_mm -= row.height_mm
    return pages


def _stack(rows: Sequence[RowSet], top_mm: float) -> list[Block]:
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
    title = set_text(
        ruler, to_print("Swap list"), _HEAD, Spot(inside.x_mm, inside.y_mm, half_mm), "heading"
    )
    end = TextStyle(_BODY.size_pt, leading_ratio=1.28, align=Align.END)
    page = join_words(
        (
            count(len(swap_list.rows), "card"),
            to_print("page {number} of {of}", number=number, of=of),
        )
    )
    spot = Spot(inside.x_mm + half_mm, inside.y_mm + 2.6, half_mm)
    said = spell(ruler, join_words((swap_list.museum, swap_list.made)))
    top_mm = title.rect.bottom_mm + 0.6
    blocks: list[Block] = [title, set_text(ruler, page, end, spot, "page")]
    blocks.append(set_text(ruler, said, _BODY, Spot(inside.x_mm, top_mm, inside.width_mm), "made"))
    if swap_list.hides_locations:
        spot = Spot(inside.x_mm, bottom_of(blocks) + 0.3, inside.width_mm)
        blocks.append(set_text(ruler, _HIDDEN, _BODY, spot, "hidden"))
    old_mm, new_mm, initials_mm = (inside.right_mm - TICKS_MM + step for step in TICK_STEPS_MM)
    place = to_print("Container") if swap_list.hides_locations else to_print("Container, place")
    labels = (
        (place, inside.x_mm, NUMBER_MM),
        (to_print("Old card, new card, and why"), inside.x_mm + NUMBER_MM + GAP_MM, 80.0),
        (to_print("Old off"), old_mm, 12.0),
        (to_print("New on"), new_mm, 12.0),
        (to_print("Initials"), initials_mm, 15.0),
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
