"""Fits an isolation label: one word for the aisle, then since when, why, and whom to ask."""

from __future__ import annotations

from dataclasses import replace
from itertools import repeat

from service.cards.papers.isolation_label import IsolationLabel
from service.cards.papers.precautions import ISOLATED, LEAVE_ALONE, NOTHING_RECORDED, SILENT
from service.cards.second.phrases import ASK
from service.cards.words import join_words
from service.geometry import Rect, Size
from service.pages.look import HAIRLINE_MM, RULE_MM, inner_rect
from service.pages.page import Block, Page, Shade, ShapeBlock, TextBlock, TextStyle
from service.pages.rounds.facts import Fact, FactLook, set_facts
from service.pages.rounds.speaking import fit_in_both
from service.pages.rounds.warnings import (
    Item,
    Voice,
    WarningLook,
    set_sentence,
    set_warnings,
    share_items,
    stack_items,
)
from service.pages.ruler import Ruler
from service.pages.setting.second import set_beside
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_number, set_text
from service.pages.setting.type import (
    CAPTION_PT,
    LEAST_CAPTION_PT,
    OBJECT_NUMBER_PT,
    size_for_distance_pt,
)
from service.printed import to_print

KIND = "isolation-label"
AISLE_DISTANCE_MM = 3000.0
"""ISOLATED is read from here, where the label is wide enough for it."""

_MARGIN_MM = 9.0
_BAND_PADDING_MM = 2.4
_GAP_MM = 5.0
_TITLE_LINES = 2
_WHY_LINES = 4
_BY_LINES = 2
_LEAST_NUMBER_PT = 16.0

_WORD = TextStyle(size_for_distance_pt(AISLE_DISTANCE_MM), weight=800, leading_ratio=1.0)
_SAID = TextStyle(16.0, leading_ratio=1.1)
_NUMBER = TextStyle(26.0, weight=800, leading_ratio=1.1)
_TITLE = TextStyle(12.0, leading_ratio=1.22)
_VALUE = TextStyle(OBJECT_NUMBER_PT, weight=700, leading_ratio=1.2)
_SMALL = TextStyle(CAPTION_PT, leading_ratio=1.25)
_FACTS = FactLook(_SMALL, _VALUE, label_mm=15.0, pen_mm=9.0, gap_mm=1.2)
_LARGE = WarningLook(
    8.0, TextStyle(11.0, weight=700, leading_ratio=1.18), TextStyle(CAPTION_PT, leading_ratio=1.22)
)
_LITTLE = WarningLook(
    7.0, replace(_LARGE.heading, size_pt=CAPTION_PT), replace(_LARGE.body, size_pt=LEAST_CAPTION_PT)
)
"""Warnings are set large where that costs no further label."""
_ITEM_GAP_MM = 1.6


def fit_isolation_label(label: IsolationLabel, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay a label out; warnings that it does not hold go on on a second one."""
    return fit_in_both(_fit, label, size, ruler)


def _fit(label: IsolationLabel, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay a label out as it is worded."""
    inside = inner_rect(size, _MARGIN_MM)
    band = _set_band(ruler, label, inside)
    foot = _set_foot(ruler, label, inside)
    head = (*band, *_set_thing(ruler, label, inside, bottom_of(band) + 2.6))
    top_mm = bottom_of(head) + 2.6
    half_mm = (inside.width_mm - _GAP_MM) / 2
    facts = _set_facts(ruler, label, Rect(inside.x_mm, top_mm, half_mm, 0))
    room_mm = min(block.rect.y_mm for block in foot) - 2.0 - top_mm
    tried = (
        share_items(_warn(ruler, label, look, half_mm), repeat(room_mm), gap_mm=_ITEM_GAP_MM)
        for look in (_LARGE, _LITTLE)
    )
    shared = min(tried, key=len)
    pages = []
    for number, some in enumerate(shared, start=1):
        x_mm = inside.x_mm + half_mm + _GAP_MM
        body = stack_items(some, x_mm, top_mm, gap_mm=_ITEM_GAP_MM)
        said = (
            to_print("label {number} of {of}", number=number, of=len(shared))
            if len(shared) > 1
            else ""
        )
        blocks = (*head, *facts, *body, *foot, *_set_count(ruler, said, foot, inside))
        title = to_print("Isolated: {number}", number=label.number)
        pages.append(Page(KIND, label.number, title, number, len(shared), size, blocks))
    return tuple(pages)


def _set_band(ruler: Ruler, label: IsolationLabel, inside: Rect) -> tuple[Block, ...]:
    """Set the word between two rules: it is read from the aisle and costs little toner."""
    isolated = ISOLATED.upper()
    wide = ruler.width_mm(isolated, _WORD)
    size_pt = _WORD.size_pt * min(1.0, (inside.width_mm - 1.0) / wide)
    style = replace(_WORD, size_pt=size_pt)
    rule = Rect(inside.x_mm, inside.y_mm, inside.width_mm, 2 * RULE_MM)
    spot = Spot(inside.x_mm, rule.bottom_mm + _BAND_PADDING_MM, inside.width_mm)
    word = set_text(ruler, isolated, style, spot, "heading")
    said = set_beside(ruler, label.second, ISOLATED, word, _SAID)
    bottom_mm = bottom_of((word, *said)) + _BAND_PADDING_MM
    below = Rect(inside.x_mm, bottom_mm, inside.width_mm, 2 * RULE_MM)
    bars = (ShapeBlock("rule", one, Shade.BLACK) for one in (rule, below))
    return (*bars, word, *said)


def _set_thing(
    ruler: Ruler, label: IsolationLabel, inside: Rect, top_mm: float
) -> tuple[Block, ...]:
    spot = Spot(inside.x_mm, top_mm, inside.width_mm)
    number = _set_number(ruler, label.number, spot)
    below = Spot(inside.x_mm, number.rect.bottom_mm + 0.4, inside.width_mm, _TITLE_LINES)
    return (number, set_text(ruler, label.title, _TITLE, below, "title"))


def _set_number(ruler: Ruler, number: str, spot: Spot) -> TextBlock:
    """Set the number on one line where it fits, else smaller, and broken if it must be."""
    wide = ruler.width_mm(number, _NUMBER)
    size_pt = _NUMBER.size_pt * min(1.0, (spot.width_mm - 0.5) / wide)
    style = replace(_NUMBER, size_pt=max(size_pt, _LEAST_NUMBER_PT))
    return set_number(ruler, number, style, spot, "number")


def _set_facts(ruler: Ruler, label: IsolationLabel, area: Rect) -> list[Block]:
    facts = (
        Fact(to_print("Since"), label.since),
        Fact(to_print("Until"), label.until),
        Fact(to_print("Why"), label.why, _WHY_LINES),
        Fact(to_print("By"), label.isolated_by, _BY_LINES),
    )
    return set_facts(ruler, facts, _FACTS, area)


def _warn(
    ruler: Ruler, label: IsolationLabel, look: WarningLook, width_mm: float
) -> tuple[Item, ...]:
    voice = Voice(ruler, label.second)
    items = set_warnings(voice, label.handling, look, width_mm)
    if label.handling.hazards:
        return items
    silence = SILENT if label.is_recorded else NOTHING_RECORDED
    return (set_sentence(voice, silence, _SMALL, width_mm), *items)


def _set_foot(ruler: Ruler, label: IsolationLabel, inside: Rect) -> tuple[Block, ...]:
    rule = ShapeBlock("rule", Rect(inside.x_mm, 0, inside.width_mm, HAIRLINE_MM), Shade.BLACK)
    blocks: list[Block] = [rule]
    asked = to_print("Ask: {asked}", asked=label.questions) if label.questions else ""
    for purpose, words, style in (
        ("do", LEAVE_ALONE, replace(_SMALL, weight=700)),
        ("questions", asked, _VALUE),
        ("museum", label.museum, _SMALL),
    ):
        if words:
            spot = Spot(inside.x_mm, bottom_of(blocks) + 0.8, inside.width_mm)
            block = set_text(ruler, words, style, spot, purpose)
            english = ASK if purpose == "questions" else words
            blocks += (block, *set_beside(ruler, label.second, english, block))
    return move_blocks(tuple(blocks), 0, inside.bottom_mm - bottom_of(blocks))


def _set_count(ruler: Ruler, said: str, foot: tuple[Block, ...], inside: Rect) -> tuple[Block, ...]:
    """Say which of several labels this is, at the end of the last line of the foot."""
    if not said:
        return ()
    words = join_words((said,))
    width_mm = ruler.width_mm(words, _SMALL) + 0.2
    y_mm = bottom_of(foot) - _SMALL.leading_mm
    return (
        set_text(ruler, words, _SMALL, Spot(inside.right_mm - width_mm, y_mm, width_mm), "count"),
    )
