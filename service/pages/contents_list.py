"""Fits the contents list: a table with a picture, everything in full words, on A4 or Letter."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.cards.card import ContentsList, ListEntry
from service.cards.parts import SecondWords
from service.cards.words import join_words
from service.errors import DoesNotFitError
from service.geometry import Rect, Size
from service.handling.lifting import LiftAdvice
from service.pages.lid.foot import NOBODY, NOT_AN_ASSESSMENT
from service.pages.lid.head import HeadText, set_head
from service.pages.look import HAIRLINE_MM, inner_rect, look_for
from service.pages.page import Align, Block, Page, PictureBlock, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.second import set_second
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_number, set_text
from service.pages.setting.type import CAPTION_PT
from service.printed import to_print

_GAP_MM = 3.0
_ENTRY = "entry"
_PICTURE_MM = 20.0
_NUMBER_MM = 34.0
_TICKS_MM = 20.0
_TICK_BOX_MM = 4.5
_ROW_PADDING_MM = 1.8

_NUMBER = TextStyle(10.5, weight=700, leading_ratio=1.2)
_TITLE = TextStyle(10.0, weight=600, leading_ratio=1.22)
_BODY = TextStyle(CAPTION_PT, leading_ratio=1.25)
_HAZARD = TextStyle(CAPTION_PT, weight=700, leading_ratio=1.25)
_LABEL = TextStyle(CAPTION_PT, weight=600, leading_ratio=1.2)


@dataclass(frozen=True, slots=True)
class _Columns:
    """The left edges of the columns and the width of the widest one."""

    number_mm: float
    picture_mm: float
    text_mm: float
    text_width_mm: float
    ticks_mm: float


@dataclass(frozen=True, slots=True)
class _Row:
    blocks: tuple[Block, ...]
    height_mm: float


def fit_contents_list(card: ContentsList, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay the list out, each object's row whole on one page.

    Raises `DoesNotFitError` when one object's row is higher than a page.
    """
    inside = inner_rect(size, look_for(size).margin_mm + 2.0)
    columns = _plan_columns(inside)
    rows = [_set_row(ruler, entry, columns, card.head.second) for entry in card.entries]
    of = 1
    while True:
        spaces = [
            _make_space(ruler, card, size, inside, (number, of)) for number in range(1, of + 1)
        ]
        shared = _share_rows(rows, [space.area.height_mm for space in spaces])
        if len(shared) <= of:
            break
        of = len(shared)
    return tuple(
        _make_page(card, size, space, rows, (number, of))
        for number, (space, rows) in enumerate(zip(spaces, shared or [[]], strict=True), start=1)
    )


@dataclass(frozen=True, slots=True)
class _Space:
    above: tuple[Block, ...]
    below: tuple[Block, ...]
    area: Rect


def _make_page(
    card: ContentsList, size: Size, space: _Space, rows: Sequence[_Row], numbering: tuple[int, int]
) -> Page:
    blocks: list[Block] = []
    y_mm = space.area.y_mm
    for row in rows:
        blocks.extend(move_blocks(row.blocks, 0, y_mm))
        y_mm += row.height_mm
    everything = (*space.above, *blocks, *space.below)
    number, of = numbering
    head = card.head
    return Page(card.kind, head.container_number, head.title, number, of, size, everything)


def _share_rows(rows: Sequence[_Row], rooms_mm: Sequence[float]) -> list[list[_Row]]:
    """Fill page after page; past the last one given, pages are as high as that one.

    Raises:
        DoesNotFitError: When a row is higher than a page.
    """
    pages: list[list[_Row]] = [[]]
    left_mm = rooms_mm[0]
    for row in rows:
        if row.height_mm > left_mm and pages[-1]:
            pages.append([])
            left_mm = rooms_mm[min(len(pages), len(rooms_mm)) - 1]
        if row.height_mm > left_mm:
            raise DoesNotFitError(_ENTRY, needed_mm=row.height_mm, available_mm=left_mm)
        pages[-1].append(row)
        left_mm -= row.height_mm
    return pages


def _plan_columns(inside: Rect) -> _Columns:
    number_mm = inside.x_mm
    picture_mm = number_mm + _NUMBER_MM + _GAP_MM
    text_mm = picture_mm + _PICTURE_MM + _GAP_MM
    ticks_mm = inside.right_mm - _TICKS_MM
    return _Columns(number_mm, picture_mm, text_mm, ticks_mm - _GAP_MM - text_mm, ticks_mm)


def _make_space(
    ruler: Ruler, card: ContentsList, size: Size, inside: Rect, numbering: tuple[int, int]
) -> _Space:
    number, of = numbering
    look = look_for(size)
    lift = card.lift
    figure = to_print("{figure_kg} kg", figure_kg=lift.figure_kg) if lift.figure_kg else ""
    weight = join_words((figure, lift.qualifier), between=", ")
    lines = (
        to_print("Contents list · {said}", said=join_words((card.count_words, weight))),
        *((*_word_lift(card), *card.notes) if number == 1 else ()),
    )
    part = to_print("page {number} of {of}", number=number, of=of) if of > 1 else ""
    head = set_head(ruler, card.head, HeadText(lines, part), inside, look)
    labels = _set_labels(ruler, _plan_columns(inside), bottom_of(head) + 1.2)
    foot = _set_foot(ruler, card, inside)
    top_mm = bottom_of(labels) + 0.8
    height_mm = min(block.rect.y_mm for block in foot) - top_mm - 1.0
    return _Space((*head, *labels), foot, Rect(inside.x_mm, top_mm, inside.width_mm, height_mm))


def write_lift(lift: LiftAdvice) -> tuple[str, ...]:
    """Word lifting advice that has a reason, with what it is worth; none where there is none."""
    if not lift.reason:
        return ()
    worth = to_print(
        "A first filter; local assessment decides. Figures: {source}", source=lift.source
    )
    return (lift.advice, lift.reason, worth)


def _word_lift(card: ContentsList) -> tuple[str, ...]:
    """Word lifting advice, that in the second language right after the English."""
    words, second = write_lift(card.lift), card.head.second
    return (*words[:1], second.beside(card.lift.advice), *words[1:]) if words and second else words


def _set_labels(ruler: Ruler, columns: _Columns, y_mm: float) -> tuple[Block, ...]:
    labels = (
        (to_print("Number, place"), columns.number_mm, _NUMBER_MM),
        (to_print("Object"), columns.picture_mm, _PICTURE_MM),
        (to_print("Here"), columns.ticks_mm, _TICKS_MM / 2),
        (to_print("Sound"), columns.ticks_mm + _TICKS_MM / 2, _TICKS_MM / 2 + 1),
    )
    return tuple(
        set_text(ruler, words, _LABEL, Spot(x_mm, y_mm, width_mm), "label")
        for words, x_mm, width_mm in labels
    )


def _set_foot(ruler: Ruler, card: ContentsList, inside: Rect) -> tuple[Block, ...]:
    rule = ShapeBlock("rule", Rect(inside.x_mm, 0, inside.width_mm, HAIRLINE_MM), Shade.BLACK)
    half_mm = inside.width_mm / 2
    ask = to_print("Ask first: {asked}", asked=card.head.questions or NOBODY)
    bold = TextStyle(CAPTION_PT, weight=700, leading_ratio=1.2)
    end = TextStyle(CAPTION_PT, leading_ratio=1.2, align=Align.END)
    first = [set_text(ruler, ask, bold, Spot(inside.x_mm, 1.2, half_mm), "questions")]
    if card.head.packed:
        spot = Spot(inside.x_mm + half_mm, 1.2, half_mm)
        first.append(set_text(ruler, card.head.packed, end, spot, "packed"))
    blocks: list[Block] = [rule, *first]
    for words in (NOT_AN_ASSESSMENT, card.head.second.note if card.head.second else ""):
        below = Spot(inside.x_mm, bottom_of(blocks), inside.width_mm)
        if words:
            blocks.append(set_text(ruler, words, _BODY, below, "disclaimer"))
    return move_blocks(blocks, 0, inside.bottom_mm - bottom_of(blocks))


def _set_row(ruler: Ruler, entry: ListEntry, columns: _Columns, second: SecondWords | None) -> _Row:
    """Set one object from y = 0; a rule above parts it from the one before."""
    y_mm = _ROW_PADDING_MM
    width_mm = columns.ticks_mm + _TICKS_MM - columns.number_mm
    rule = ShapeBlock("row-rule", Rect(columns.number_mm, 0, width_mm, HAIRLINE_MM), Shade.GREY)
    spot = Spot(columns.number_mm, y_mm, _NUMBER_MM)
    number = set_number(ruler, entry.object_number, _NUMBER, spot, "object-number")
    blocks: list[Block] = [rule, number]
    if entry.place:
        below = Spot(columns.number_mm, number.rect.bottom_mm + 0.3, _NUMBER_MM)
        blocks.append(set_text(ruler, entry.place, _BODY, below, "place"))
    blocks.extend(_set_photo(ruler, entry, Rect(columns.picture_mm, y_mm, _PICTURE_MM, 16.0)))
    words_at = Rect(columns.text_mm, y_mm, columns.text_width_mm, 0)
    blocks.extend(_set_words(ruler, entry, words_at, second))
    blocks.extend(_set_ticks(columns, y_mm))
    return _Row(tuple(blocks), bottom_of(blocks) + _ROW_PADDING_MM)


def _set_photo(ruler: Ruler, entry: ListEntry, frame: Rect) -> tuple[Block, ...]:
    if not entry.photo:
        words = Spot(frame.x_mm, frame.y_mm, frame.width_mm)
        return (set_text(ruler, entry.photo_words, _BODY, words, "no-photo"),)
    alt = f"{entry.object_number}: {entry.title}"
    return (PictureBlock("photo", frame, entry.photo, alt, across=Align.START, down=Align.START),)


def _set_words(
    ruler: Ruler, entry: ListEntry, area: Rect, second: SecondWords | None
) -> tuple[Block, ...]:
    blocks: list[Block] = []
    y_mm = area.y_mm
    lines = [("title", entry.title, _TITLE)]
    lines += [("hazard", words, _HAZARD) for words in entry.hazards]
    lines += [("detail", words, _BODY) for words in entry.details]
    for purpose, words, style in lines:
        block = set_text(ruler, words, style, Spot(area.x_mm, y_mm, area.width_mm), purpose)
        below = Spot(area.x_mm, block.rect.bottom_mm, area.width_mm)
        said = set_second(ruler, second, (words,), below) if purpose != "title" else ()
        blocks.extend((block, *said))
        y_mm = bottom_of(blocks)
    return tuple(blocks)


def _set_ticks(columns: _Columns, y_mm: float) -> tuple[Block, ...]:
    return tuple(
        ShapeBlock(
            "tick-box",
            Rect(columns.ticks_mm + index * _TICKS_MM / 2, y_mm, _TICK_BOX_MM, _TICK_BOX_MM),
            outline_mm=0.25,
        )
        for index in range(2)
    )
