"""Sets one row of the check sheet: which container, what is in it, what to know, what to tick.

A bar beside the row says that it is overdue; the words say since when.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from service.cards.papers.check_sheet import SheetRow
from service.cards.second.phrases import ASK
from service.cards.words import join_words
from service.geometry import Rect
from service.handling.checks.kinds import CheckKind
from service.pages.look import HAIRLINE_MM
from service.pages.page import Align, Block, PictureBlock, Shade, ShapeBlock, TextStyle
from service.pages.rounds.warnings import (
    Item,
    Voice,
    WarningLook,
    pair_items,
    set_warnings,
    share_items,
    stack_items,
)
from service.pages.ruler import Ruler
from service.pages.setting.second import set_beside
from service.pages.setting.stack import bottom_of
from service.pages.setting.text import Spot, set_number, set_text
from service.pages.setting.type import CAPTION_PT, LEAST_CAPTION_PT
from service.printed import to_print

PLACE_MM = 46.0
GAP_MM = 4.0
TICK_STEP_MM = 14.5
TICK_WORDS_MM = 10.0
_LEAST_TICKS_MM = 62.0
"""Below this there is no room to write a note under the boxes."""
_BOX_MM = 5.0
_BOX_GAP_MM = 2.0
_NOTE_MM = 7.0
_PADDING_MM = 2.4
_BELOW_MM = 1.8
_PHOTO_MM = 16.0
_PHOTO_GAP_MM = 2.0
_OUTLINE_MM = 0.3
_BAR_MM = 1.6
_BAR_OUTSIDE_MM = 3.6
_ITEM_GAP_MM = 1.0

_NUMBERS = tuple(
    TextStyle(size_pt, weight=800, leading_ratio=1.1) for size_pt in (15.0, 13.0, 11.0)
)
_TITLE = TextStyle(9.5, leading_ratio=1.22)
_SMALL = TextStyle(LEAST_CAPTION_PT, leading_ratio=1.25)
_BOLD = replace(_SMALL, weight=700)
_LOOK = WarningLook(6.0, TextStyle(CAPTION_PT, weight=700, leading_ratio=1.15), _SMALL)
_TITLE_LINES = 3


@dataclass(frozen=True, slots=True)
class Columns:
    """Where the columns of a sheet stand: its width inside, and the kinds that have boxes."""

    inside: Rect
    asked: tuple[CheckKind, ...]

    @property
    def ticks_x_mm(self) -> float:
        """Where the words beside the boxes begin."""
        boxes_mm = TICK_WORDS_MM + TICK_STEP_MM * len(self.asked)
        return self.inside.right_mm - max(boxes_mm, _LEAST_TICKS_MM)

    @property
    def middle_x_mm(self) -> float:
        """Where photos, and the warnings below them, begin."""
        return self.inside.x_mm + PLACE_MM + GAP_MM

    @property
    def middle_mm(self) -> float:
        """How wide the photos may be together."""
        return self.ticks_x_mm - GAP_MM - self.middle_x_mm

    @property
    def warning_mm(self) -> float:
        """How wide each of two warnings beside each other may be, below photos and boxes."""
        return (self.inside.right_mm - self.middle_x_mm - GAP_MM) / 2

    def tick_x_mm(self, kind: CheckKind) -> float:
        """Where the boxes of a kind begin."""
        return self.ticks_x_mm + TICK_WORDS_MM + TICK_STEP_MM * self.asked.index(kind)


def set_rows(voice: Voice, row: SheetRow, columns: Columns, *, room_mm: float) -> Iterator[Item]:
    """Set a container as one row; warnings that no page holds go on in rows that name it again."""
    ruler = voice.ruler
    place = _set_place(ruler, row, columns.inside)
    ticks = _set_ticks(ruler, row, columns)
    photos = _set_photos(row, columns)
    items, top_mm = _place_warnings(voice, row, columns, bottom_of([*photos, *ticks]))
    shared = share_items(items, _rooms(room_mm, top_mm), gap_mm=_ITEM_GAP_MM)
    for number, some in enumerate(shared, start=1):
        is_first = number == 1
        y_mm = top_mm if is_first else _PADDING_MM
        middle = stack_items(some, columns.middle_x_mm, y_mm, gap_mm=_ITEM_GAP_MM)
        beside = [*place, *ticks, *photos] if is_first else _set_again(ruler, row, columns.inside)
        yield _close([*beside, *middle], columns.inside, is_overdue=row.is_overdue)


def _place_warnings(
    voice: Voice, row: SheetRow, columns: Columns, bottom_mm: float
) -> tuple[tuple[Item, ...], float]:
    """Set the warnings in pairs below photos and boxes, or beside these where no photo stands.

    Gives them with where they begin.
    """
    beside = _warn(voice, row, columns.middle_mm)
    high_mm = sum(item.height_mm + _ITEM_GAP_MM for item in beside)
    if not row.photos and _PADDING_MM + high_mm <= bottom_mm:
        return beside, _PADDING_MM
    below = _warn(voice, row, columns.warning_mm)
    return pair_items(below, columns.warning_mm + GAP_MM), bottom_mm + _BELOW_MM


def _rooms(room_mm: float, top_mm: float) -> Iterator[float]:
    below_mm = _PADDING_MM + HAIRLINE_MM
    yield room_mm - top_mm - below_mm
    while True:
        yield room_mm - _PADDING_MM - below_mm


def _close(blocks: list[Block], inside: Rect, *, is_overdue: bool) -> Item:
    bottom_mm = bottom_of(blocks)
    if is_overdue:
        x_mm = inside.x_mm - _BAR_OUTSIDE_MM
        bar = Rect(x_mm, _PADDING_MM, _BAR_MM, bottom_mm - _PADDING_MM)
        blocks = [*blocks, ShapeBlock("overdue-bar", bar, Shade.BLACK)]
    rule = Rect(inside.x_mm, bottom_mm + _PADDING_MM, inside.width_mm, HAIRLINE_MM)
    return Item((*blocks, ShapeBlock("row-rule", rule, Shade.GREY)), rule.bottom_mm)


def _set_place(ruler: Ruler, row: SheetRow, inside: Rect) -> list[Block]:
    blocks: list[Block] = [_set_number(ruler, row, inside)]
    lines = (
        ("title", row.title, _TITLE, _TITLE_LINES),
        ("location", row.location, _TITLE, 0),
        ("count", row.count_words, _SMALL, 0),
        *(("last", words, _BOLD if row.is_overdue else _SMALL, 0) for words in row.last),
        *(("out", words, _SMALL, 0) for words in row.outs),
    )
    for purpose, words, style, most in lines:
        if words:
            spot = Spot(inside.x_mm, bottom_of(blocks) + 0.4, PLACE_MM, most)
            blocks.append(set_text(ruler, words, style, spot, purpose))
    return blocks


def _set_again(ruler: Ruler, row: SheetRow, inside: Rect) -> list[Block]:
    number = _set_number(ruler, row, inside)
    spot = Spot(inside.x_mm, number.rect.bottom_mm + 0.4, PLACE_MM)
    return [number, set_text(ruler, to_print("continued"), _SMALL, spot, "continued")]


def _set_number(ruler: Ruler, row: SheetRow, inside: Rect) -> Block:
    spot = Spot(inside.x_mm, _PADDING_MM - 0.6, PLACE_MM)
    tried = [
        set_number(ruler, row.container_number, style, spot, "container-number")
        for style in _NUMBERS
    ]
    return next((block for block in tried if len(block.lines) == 1), tried[-1])


def _set_photos(row: SheetRow, columns: Columns) -> list[Block]:
    step_mm = _PHOTO_MM + _PHOTO_GAP_MM
    most = int((columns.middle_mm + _PHOTO_GAP_MM) / step_mm)
    return [
        PictureBlock(
            "photo",
            Rect(columns.middle_x_mm + at * step_mm, _PADDING_MM, _PHOTO_MM, _PHOTO_MM),
            one.photo,
            to_print("Photo of {object_number}", object_number=one.object_number),
            Align.START,
            Align.START,
        )
        for at, one in enumerate(row.photos[:most])
    ]


def _warn(voice: Voice, row: SheetRow, width_mm: float) -> tuple[Item, ...]:
    ruler = voice.ruler
    items = set_warnings(voice, row.handling, _LOOK, width_mm)
    asked = join_words((to_print("Ask:"), row.questions), between=" ") if row.questions else ""
    if not asked:
        return items
    block = set_text(ruler, asked, _BOLD, Spot(0, 0, width_mm), "questions")
    blocks = (block, *set_beside(ruler, voice.second, ASK, block))
    return (*items, Item(blocks, bottom_of(blocks)))


def _set_ticks(ruler: Ruler, row: SheetRow, columns: Columns) -> list[Block]:
    blocks: list[Block] = []
    for at, words in enumerate((to_print("OK"), to_print("Found"))):
        y_mm = _PADDING_MM + at * (_BOX_MM + _BOX_GAP_MM)
        spot = Spot(columns.ticks_x_mm, y_mm + 0.7, TICK_WORDS_MM)
        blocks.append(set_text(ruler, words, _SMALL, spot, "tick-words"))
        blocks += [
            ShapeBlock(
                "tick-box",
                Rect(columns.tick_x_mm(kind), y_mm, _BOX_MM, _BOX_MM),
                outline_mm=_OUTLINE_MM,
            )
            for kind in row.asked
        ]
    y_mm = _PADDING_MM + 2 * _BOX_MM + _BOX_GAP_MM + _NOTE_MM
    for words, x_mm, right_mm in _pen_lines(columns):
        spot = Spot(x_mm, y_mm - _SMALL.leading_mm, right_mm - x_mm)
        blocks.append(set_text(ruler, words, _SMALL, spot, "pen-words"))
        start_mm = x_mm + ruler.width_mm(words, _SMALL) + 1.2
        line = Rect(start_mm, y_mm - 0.4, right_mm - start_mm, HAIRLINE_MM)
        blocks.append(ShapeBlock("line", line, Shade.BLACK))
    return blocks


def _pen_lines(columns: Columns) -> tuple[tuple[str, float, float], ...]:
    middle_mm = columns.inside.right_mm - 24.0
    return (
        (to_print("Note"), columns.ticks_x_mm, middle_mm - 2.0),
        (to_print("Initials"), middle_mm, columns.inside.right_mm),
    )
