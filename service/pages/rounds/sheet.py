"""Fits the check sheet: a row a container in walking order, none divided by a page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import repeat

from service.cards.papers.check_sheet import CheckSheet
from service.cards.papers.precautions import FOUND, NO_PROMISE
from service.cards.second.phrases import ASK
from service.cards.words import count, join_words
from service.geometry import Rect, Size
from service.handling.checks.kinds import CHECKS
from service.pages.look import HAIRLINE_MM, RULE_MM, inner_rect
from service.pages.page import Align, Block, Page, Shade, ShapeBlock, TextStyle
from service.pages.rounds.sheet_row import GAP_MM, PLACE_MM, TICK_STEP_MM, Columns, set_rows
from service.pages.rounds.warnings import Item, Voice, share_items, stack_items
from service.pages.ruler import Ruler
from service.pages.setting.second import set_beside
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_text
from service.pages.setting.type import CAPTION_PT, LEAST_CAPTION_PT
from service.printed import to_print

KIND = "check-sheet"

_MARGIN_MM = 12.0
_HEAD = TextStyle(20.0, weight=800, leading_ratio=1.1)
_BODY = TextStyle(max(CAPTION_PT, 9.0), leading_ratio=1.28)
_LABEL = TextStyle(LEAST_CAPTION_PT, weight=600, leading_ratio=1.2)
_FOOT = TextStyle(LEAST_CAPTION_PT, leading_ratio=1.25)

_HIDDEN = to_print("Places are hidden: the sheet goes by container number.")
_HOW = (
    to_print(
        "Tick one box for each kind. What cannot be done, or may not be opened, stays empty: note"
        " why."
    ),
    FOUND,
    NO_PROMISE,
)


def fit_check_sheet(sheet: CheckSheet, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay the sheet out; hazards are never shortened, titles may be."""
    inside = inner_rect(size, _MARGIN_MM)
    columns = Columns(inside, sheet.asked)
    foot = _set_foot(ruler, sheet, inside)
    top_mm = bottom_of(_set_head(ruler, sheet, columns, (88, 88)))
    room_mm = min(block.rect.y_mm for block in foot) - top_mm - 1.5
    voice = Voice(ruler, sheet.second)
    rows = [part for row in sheet.rows for part in set_rows(voice, row, columns, room_mm=room_mm)]
    shared = share_items(rows, repeat(room_mm), gap_mm=0.0)
    return tuple(
        _set_page(ruler, sheet, columns, (some, top_mm, foot), (number, len(shared)))
        for number, some in enumerate(shared, start=1)
    )


def _set_page(
    ruler: Ruler,
    sheet: CheckSheet,
    columns: Columns,
    body: tuple[Sequence[Item], float, tuple[Block, ...]],
    numbering: tuple[int, int],
) -> Page:
    rows, top_mm, foot = body
    head = _set_head(ruler, sheet, columns, numbering)
    # Each row stands on the column of the sheet already; only its height is chosen here.
    blocks = (*head, *stack_items(rows, 0.0, top_mm, gap_mm=0.0), *foot)
    title = to_print("Check sheet, {made}", made=sheet.made)
    inside = columns.inside
    size = Size(inside.width_mm + 2 * _MARGIN_MM, inside.height_mm + 2 * _MARGIN_MM)
    return Page(KIND, "check sheet", title, *numbering, size, blocks)


def _set_head(
    ruler: Ruler, sheet: CheckSheet, columns: Columns, numbering: tuple[int, int]
) -> tuple[Block, ...]:
    inside = columns.inside
    number, of = numbering
    half_mm = inside.width_mm / 2
    title = set_text(
        ruler, to_print("Check sheet"), _HEAD, Spot(inside.x_mm, inside.y_mm, half_mm), "heading"
    )
    page = join_words(
        (
            count(len(sheet.rows), "container"),
            to_print("page {number} of {of}", number=number, of=of),
        )
    )
    spot = Spot(inside.x_mm + half_mm, inside.y_mm + 2.6, half_mm)
    blocks: list[Block] = [
        title,
        set_text(ruler, page, replace(_BODY, align=Align.END), spot, "page"),
    ]
    said = join_words((sheet.museum, sheet.made, sheet.until))
    lines = (("made", said), ("hidden", _HIDDEN if sheet.hides_locations else ""))
    y_mm = title.rect.bottom_mm + 0.6
    for purpose, words in lines:
        if words:
            block = set_text(ruler, words, _BODY, Spot(inside.x_mm, y_mm, inside.width_mm), purpose)
            blocks.append(block)
            y_mm = block.rect.bottom_mm + 0.3
    blocks += _set_labels(ruler, sheet, columns, bottom_of(blocks) + 2.4)
    rule = Rect(inside.x_mm, bottom_of(blocks) + 0.8, inside.width_mm, RULE_MM)
    return (*blocks, ShapeBlock("rule", rule, Shade.BLACK))


def _set_labels(ruler: Ruler, sheet: CheckSheet, columns: Columns, top_mm: float) -> list[Block]:
    place = to_print("Container") if sheet.hides_locations else to_print("Container, place")
    labels = [
        (place, columns.inside.x_mm, PLACE_MM),
        (to_print("What is in it, what to know"), columns.middle_x_mm, columns.middle_mm + GAP_MM),
        *((CHECKS[kind].name, columns.tick_x_mm(kind), TICK_STEP_MM) for kind in columns.asked),
    ]
    return [
        set_text(ruler, words, _LABEL, Spot(x_mm, top_mm, width_mm), "label")
        for words, x_mm, width_mm in labels
    ]


def _set_foot(ruler: Ruler, sheet: CheckSheet, inside: Rect) -> tuple[Block, ...]:
    rule = ShapeBlock("rule", Rect(inside.x_mm, 0, inside.width_mm, HAIRLINE_MM), Shade.BLACK)
    blocks: list[Block] = [rule]
    looks = (f"{CHECKS[kind].name}: {CHECKS[kind].looks_for}." for kind in sheet.asked)
    asked = to_print("Ask: {asked}", asked=sheet.questions) if sheet.questions else ""
    for purpose, words, style in (
        ("looks-for", join_words(looks, between=" "), _FOOT),
        *(("how", words, _FOOT) for words in _HOW),
        ("questions", asked, replace(_BODY, weight=700)),
        ("note", sheet.second.note if sheet.second else "", _FOOT),
    ):
        if words:
            spot = Spot(inside.x_mm, bottom_of(blocks) + 0.6, inside.width_mm)
            block = set_text(ruler, words, style, spot, purpose)
            english = ASK if purpose == "questions" else words
            blocks += (block, *set_beside(ruler, sheet.second, english, block))
    return move_blocks(tuple(blocks), 0, inside.bottom_mm - bottom_of(blocks))
