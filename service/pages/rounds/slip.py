"""Fits a removal slip: what is gone first, then where from, to whom and until when, then warnings.

Warnings that one card does not hold go on on a second one, which names the object again.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from service.cards.papers.precautions import SILENT
from service.cards.papers.removal_slip import RemovalSlip
from service.cards.second.phrases import ASK
from service.cards.words import join_words
from service.errors import DoesNotFitError
from service.geometry import Rect, Size
from service.pages.look import HAIRLINE_MM, RULE_MM, inner_rect
from service.pages.page import Align, Block, Page, PictureBlock, Shade, ShapeBlock, TextStyle
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
from service.pages.setting.type import CAPTION_PT, LEAST_CAPTION_PT
from service.printed import to_print

KIND = "removal-slip"

_MARGIN_MM = 7.0
_PHOTO = Size(34.0, 27.0)
_GAP_MM = 3.0
_NAME_LINES = 3
_WORD_LINES = 2
_REASON_LINES = 3

_REMOVED = TextStyle(19.0, weight=800, leading_ratio=1.1)
_NUMBERS = tuple(
    TextStyle(size_pt, weight=800, leading_ratio=1.12) for size_pt in (17.0, 14.0, 11.5)
)
_NAME = TextStyle(10.0, leading_ratio=1.22)
_VALUE = TextStyle(10.0, weight=600, leading_ratio=1.22)
_SMALL = TextStyle(LEAST_CAPTION_PT, leading_ratio=1.25)
_FACTS = FactLook(_SMALL, _VALUE, label_mm=16.5, pen_mm=6.4, gap_mm=0.5)
_LARGE = WarningLook(
    9.0,
    TextStyle(10.0, weight=700, leading_ratio=1.18),
    TextStyle(CAPTION_PT, leading_ratio=1.22),
)
_LITTLE = WarningLook(7.0, replace(_LARGE.heading, size_pt=CAPTION_PT), _SMALL)
"""Warnings are set large where one card holds them so."""
_ITEM_GAP_MM = 1.2

_LEAVE = to_print("Leave this slip in the gap until the object is back.")


def fit_removal_slip(slip: RemovalSlip, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay a slip out on as many cards as its warnings need, nearly always one.

    Raises:
        DoesNotFitError: When what was taken out cannot be named on one card.
    """
    return fit_in_both(_fit, slip, size, ruler)


def _fit(slip: RemovalSlip, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay a slip out as it is worded.

    Raises:
        DoesNotFitError: When what was taken out cannot be named on one card.
    """
    inside = inner_rect(size, _MARGIN_MM)
    foot = _set_foot(ruler, slip, inside)
    foot_mm = min(block.rect.y_mm for block in foot) - 1.5
    first = _set_first(ruler, slip, inside)
    if bottom_of(first) > foot_mm:
        needed_mm, available_mm = bottom_of(first) - inside.y_mm, foot_mm - inside.y_mm
        raise DoesNotFitError(KIND, needed_mm=needed_mm, available_mm=available_mm)
    again = _set_again(ruler, slip, inside)
    tried = (
        share_items(
            _warn(ruler, slip, look, inside.width_mm),
            _rooms(foot_mm, first, again),
            gap_mm=_ITEM_GAP_MM,
        )
        for look in (_LARGE, _LITTLE)
    )
    shared = min(tried, key=len)
    pages = []
    for number, some in enumerate(shared, start=1):
        head = first if number == 1 else again
        top_mm = bottom_of(head) + _ITEM_GAP_MM
        body = stack_items(some, inside.x_mm, top_mm, gap_mm=_ITEM_GAP_MM)
        blocks = (*_set_top(ruler, slip, inside, (number, len(shared))), *head, *body, *foot)
        title = to_print("Removal slip, {object_number}", object_number=slip.object_number)
        pages.append(Page(KIND, slip.container_number, title, number, len(shared), size, blocks))
    return tuple(pages)


def _rooms(foot_mm: float, first: Sequence[Block], again: Sequence[Block]) -> Iterator[float]:
    yield foot_mm - bottom_of(first) - _ITEM_GAP_MM
    while True:
        yield foot_mm - bottom_of(again) - _ITEM_GAP_MM


def _warn(ruler: Ruler, slip: RemovalSlip, look: WarningLook, width_mm: float) -> tuple[Item, ...]:
    voice = Voice(ruler, slip.second)
    items = set_warnings(voice, slip.handling, look, width_mm)
    if slip.handling.hazards:
        return items
    return (*items, set_sentence(voice, SILENT, look.body, width_mm))


def _set_top(
    ruler: Ruler, slip: RemovalSlip, inside: Rect, numbering: tuple[int, int]
) -> tuple[Block, ...]:
    number, of = numbering
    card = to_print("card {number} of {of}", number=number, of=of) if of > 1 else ""
    said = join_words((to_print("Slip {slip}", slip=slip.slip), card))
    removed = set_text(
        ruler, to_print("REMOVED"), _REMOVED, Spot(inside.x_mm, inside.y_mm - 1.5, 55.0), "heading"
    )
    half_mm = inside.width_mm / 2
    spot = Spot(inside.x_mm + half_mm, inside.y_mm + 0.6, half_mm)
    end = set_text(ruler, said, replace(_VALUE, align=Align.END), spot, "slip")
    rule = Rect(inside.x_mm, _rule_mm(inside), inside.width_mm, RULE_MM)
    return (removed, end, ShapeBlock("rule", rule, Shade.BLACK))


def _rule_mm(inside: Rect) -> float:
    return inside.y_mm + _REMOVED.leading_mm - 0.9


def _set_first(ruler: Ruler, slip: RemovalSlip, inside: Rect) -> tuple[Block, ...]:
    top_mm = _rule_mm(inside) + 2.2
    has_photo = bool(slip.photo)
    width_mm = inside.width_mm - (_PHOTO.width_mm + _GAP_MM if has_photo else 0.0)
    blocks = list(_set_object(ruler, slip, Rect(inside.x_mm, top_mm, width_mm, 0)))
    if has_photo:
        x_mm = inside.right_mm - _PHOTO.width_mm
        frame = Rect(x_mm, top_mm, _PHOTO.width_mm, _PHOTO.height_mm)
        alt = to_print("Photo of {object_number}", object_number=slip.object_number)
        blocks.append(PictureBlock("photo", frame, slip.photo, alt, Align.END, Align.START))
    below = Rect(inside.x_mm, bottom_of(blocks) + 2.0, inside.width_mm, 0)
    blocks += _set_facts(ruler, slip, below)
    rule = Rect(inside.x_mm, bottom_of(blocks) + 1.2, inside.width_mm, HAIRLINE_MM)
    return (*blocks, ShapeBlock("facts-rule", rule, Shade.BLACK))


def _set_again(ruler: Ruler, slip: RemovalSlip, inside: Rect) -> tuple[Block, ...]:
    area = Rect(inside.x_mm, _rule_mm(inside) + 2.2, inside.width_mm, 0)
    return _set_object(ruler, replace(slip, photo="", photo_words=""), area)


def _set_object(ruler: Ruler, slip: RemovalSlip, area: Rect) -> tuple[Block, ...]:
    spot = Spot(area.x_mm, area.y_mm, area.width_mm)
    tried = [
        set_number(ruler, slip.object_number, style, spot, "object-number") for style in _NUMBERS
    ]
    number = next((block for block in tried if len(block.lines) == 1), tried[-1])
    blocks: list[Block] = [number]
    parts = to_print("Parts: {parts}", parts=slip.parts) if slip.parts else ""
    photo = slip.photo_words[:1].upper() + slip.photo_words[1:]
    lines = (
        ("name", slip.name, _NAME, _NAME_LINES),
        ("parts", parts, _VALUE, 0),
        (
            "photo-words",
            to_print("Photo: {photo_words}", photo_words=slip.photo_words) if photo else "",
            _SMALL,
            1,
        ),
    )
    for purpose, words, style, most in lines:
        if words:
            below = Spot(area.x_mm, bottom_of(blocks) + 0.6, area.width_mm, most)
            blocks.append(set_text(ruler, words, style, below, purpose))
    return tuple(blocks)


def _set_facts(ruler: Ruler, slip: RemovalSlip, area: Rect) -> list[Block]:
    source = join_words((slip.container_number, slip.place), between=", ")
    facts = (
        Fact(to_print("From"), source),
        *([Fact(to_print("Place"), slip.location)] if slip.location else []),
        Fact(to_print("To"), slip.to_whom, _WORD_LINES),
        Fact(to_print("Taken by"), slip.taken_by, _WORD_LINES),
        Fact(to_print("Out"), slip.out_on),
        Fact(to_print("Due back"), slip.due_back),
        Fact(to_print("Why"), slip.reason, _REASON_LINES),
    )
    return set_facts(ruler, facts, _FACTS, area)


def _set_foot(ruler: Ruler, slip: RemovalSlip, inside: Rect) -> tuple[Block, ...]:
    rule = ShapeBlock("rule", Rect(inside.x_mm, 0, inside.width_mm, HAIRLINE_MM), Shade.BLACK)
    blocks: list[Block] = [rule]
    asked = to_print("Ask: {asked}", asked=slip.questions) if slip.questions else ""
    for purpose, words, style in (
        ("questions", asked, replace(_VALUE, size_pt=CAPTION_PT)),
        ("leave", _LEAVE, _SMALL),
        ("museum", slip.museum, _SMALL),
    ):
        if words:
            spot = Spot(inside.x_mm, bottom_of(blocks) + 0.5, inside.width_mm)
            block = set_text(ruler, words, style, spot, purpose)
            asks = purpose == "questions"
            blocks += (block, *(set_beside(ruler, slip.second, ASK, block) if asks else ()))
    return move_blocks(tuple(blocks), 0, inside.bottom_mm - bottom_of(blocks))
