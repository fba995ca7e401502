"""A lid card for very full containers: every number and name in columns, a few pictures above.

Used where pictures of every object would fall below the size at which they tell anything. The
contents list has the pictures and the full titles.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from service.cards.card import LidCard, SideCard
from service.cards.compose.warn import MARKS_BESIDE
from service.cards.parts import CardLayer, CardObject
from service.errors import DoesNotFitError
from service.geometry import Rect, Size
from service.pages.lid.cells import set_picture
from service.pages.lid.space import CardSpace, finish_page, make_spaces
from service.pages.page import Align, Block, MarkBlock, Page, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.stack import bottom_of
from service.pages.setting.text import Spot, break_number, longest_piece_mm, set_number, set_text
from service.pages.setting.type import CAPTION_PT, LEAST_OBJECT_NUMBER_PT
from service.printed import to_print

_NUMBER = TextStyle(LEAST_OBJECT_NUMBER_PT, weight=700, leading_ratio=1.16)
_TITLE = TextStyle(CAPTION_PT, leading_ratio=1.16)
_HEADING = TextStyle(LEAST_OBJECT_NUMBER_PT, weight=800, leading_ratio=1.3)
_NOTE = TextStyle(CAPTION_PT, weight=600, leading_ratio=1.2)
_NOTE_WORDS = to_print("A few of the objects; the contents list shows and describes them all.")
_PICTURE_MM = 20.0
_PICTURE_WIDTH_MM = 26.0
_LONGEST_NUMBER_MM = 34.0
_LONGEST_PIECE_MM = 60.0
_LEAST_TITLE_MM = 18.0
_COLUMN_GAP_MM = 4.0
_MARK_MM = 4.2
_ROW_MM = _NUMBER.leading_mm + 0.35
_MOST_PAGES = 40
_HALVINGS = 12
"""Enough to find a share of a page to a thousandth."""
_CONTENTS = "list of contents"


@dataclass(frozen=True, slots=True)
class _Row:
    """A line of the list: a heading, or one object."""

    heading: str
    item: CardObject | None
    height_mm: float


@dataclass(frozen=True, slots=True)
class _Columns:
    count: int
    width_mm: float
    number_mm: float


def fit_lists(card: LidCard | SideCard, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay the card out as lists on as many pages as every number needs.

    The fewest pages win, then the fewest columns: wide columns show more of each title.

    Raises:
        DoesNotFitError: When the container holds more than any number of cards should.
    """
    for of in range(1, _MOST_PAGES):
        spaces = make_spaces(card, size, ruler, of=of)
        if of > 1 and spaces[-1].is_full:
            break
        for columns in _plan_columns(ruler, card, spaces[0].area.width_mm):
            pages = _fill(card, spaces, ruler, columns)
            if pages:
                return pages
    room_mm = _MOST_PAGES * size.height_mm
    needed_mm = len(card.objects) * _NUMBER.leading_mm
    raise DoesNotFitError(_CONTENTS, needed_mm=needed_mm, available_mm=room_mm)


def _fill(
    card: LidCard | SideCard, spaces: Sequence[CardSpace], ruler: Ruler, columns: _Columns
) -> tuple[Page, ...]:
    """Fill the pages evenly; empty where they are not enough."""
    sample = _set_sample(ruler, card, spaces[0].area)
    tops = [space.area.y_mm for space in spaces]
    tops[0] = bottom_of(sample) + 2.0 if sample else tops[0]
    rooms = [
        0.0 if space.is_full else space.area.bottom_mm - top
        for space, top in zip(spaces, tops, strict=True)
    ]
    rows = list(_make_rows(ruler, card.layers, columns))
    heights = _even_heights(rows, rooms, columns.count)
    if heights is None:
        return ()
    waiting = iter(rows)
    held: list[_Row] = []
    pages = []
    for index, (space, top_mm) in enumerate(zip(spaces, tops, strict=True)):
        blocks = list(sample) if index == 0 else []
        for column in range(columns.count):
            x_mm = space.area.x_mm + column * (columns.width_mm + _COLUMN_GAP_MM)
            taken = _take(waiting, held, heights[index])
            corner = Rect(x_mm, top_mm, columns.width_mm, 0)
            blocks.extend(_set_column(ruler, taken, corner, columns))
        pages.append(finish_page(card, space, blocks))
    return tuple(pages)


def _even_heights(rows: Sequence[_Row], rooms: Sequence[float], columns: int) -> list[float] | None:
    """Find the least share of each page's room that still takes every row."""

    def heights(share_ratio: float) -> list[float]:
        return [room * share_ratio for room in rooms]

    if _rows_taken(rows, heights(1.0), columns) < len(rows):
        return None
    low, high = 0.0, 1.0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        enough = _rows_taken(rows, heights(middle), columns) == len(rows)
        low, high = (low, middle) if enough else (middle, high)
    return _spare_rows(rows, heights(high), columns)


def _spare_rows(rows: Sequence[_Row], heights: list[float], columns: int) -> list[float]:
    """Let later pages hold a row less while all rows still fit, so that the last is not bare."""
    best = heights
    for first in range(len(heights) - 1, -1, -1):
        spared = [height_mm - _ROW_MM * (index >= first) for index, height_mm in enumerate(heights)]
        if _rows_taken(rows, spared, columns) < len(rows):
            break
        best = spared
    return best


def _rows_taken(rows: Sequence[_Row], heights: Sequence[float], columns: int) -> int:
    held: list[_Row] = []
    waiting, taken = iter(rows), 0
    for height_mm in heights:
        for _ in range(columns):
            taken += len(_take(waiting, held, height_mm))
    return taken


def _take(waiting: Iterator[_Row], held: list[_Row], height_mm: float) -> list[_Row]:
    """Take rows for one column; a heading never stands last."""
    taken: list[_Row] = []
    used_mm = 0.0
    while True:
        row = held.pop() if held else next(waiting, None)
        if row is None:
            return taken
        if used_mm + row.height_mm > height_mm:
            held.append(row)
            break
        taken.append(row)
        used_mm += row.height_mm
    while taken and taken[-1].item is None:
        held.append(taken.pop())
    return taken


def _make_rows(ruler: Ruler, layers: Sequence[CardLayer], columns: _Columns) -> Iterator[_Row]:
    for layer in layers:
        if layer.heading:
            yield _Row(layer.heading, None, _HEADING.leading_mm)
        for item in layer.objects:
            lines = len(
                break_number(ruler, item.object_number, _NUMBER, width_mm=columns.number_mm)
            )
            yield _Row("", item, (lines - 1) * _NUMBER.leading_mm + _ROW_MM)


def _plan_columns(ruler: Ruler, card: LidCard | SideCard, width_mm: float) -> Iterator[_Columns]:
    """Give every number of columns that leaves room for a title, the fewest first."""
    numbers = [item.object_number for item in card.objects]
    natural_mm = max((ruler.width_mm(number, _NUMBER) for number in numbers), default=0.0)
    least_mm = longest_piece_mm(ruler, numbers, _NUMBER)
    number_mm = max(min(least_mm, _LONGEST_PIECE_MM), min(natural_mm, _LONGEST_NUMBER_MM)) + 0.2
    wanted_mm = number_mm + _LEAST_TITLE_MM + _COLUMN_GAP_MM
    most = max(1, int((width_mm + _COLUMN_GAP_MM) / wanted_mm))
    for count in range(1, most + 1):
        column_mm = (width_mm - (count - 1) * _COLUMN_GAP_MM) / count
        yield _Columns(count, column_mm, number_mm)


def _set_sample(ruler: Ruler, card: LidCard | SideCard, area: Rect) -> tuple[Block, ...]:
    """Show a few objects, those with hazards first; none where that leaves too little room."""
    if area.height_mm < _PICTURE_MM * 2.5:
        return ()
    count = max(1, int((area.width_mm + 3.0) / (_PICTURE_WIDTH_MM + 3.0)))
    step_mm = (area.width_mm + 3.0) / count
    blocks: list[Block] = []
    for index, item in enumerate(_choose_sample(card.objects, count)):
        frame = Rect(area.x_mm + index * step_mm, area.y_mm, step_mm - 3.0, _PICTURE_MM)
        blocks.extend(set_picture(ruler, item, frame))
        style = TextStyle(CAPTION_PT, weight=700, leading_ratio=1.15, align=Align.START)
        spot = Spot(frame.x_mm, frame.bottom_mm + 0.6, frame.width_mm)
        blocks.append(set_number(ruler, item.object_number, style, spot, "sample-number"))
    if not blocks:
        return ()
    spot = Spot(area.x_mm, bottom_of(blocks) + 0.8, area.width_mm)
    return (*blocks, set_text(ruler, _NOTE_WORDS, _NOTE, spot, "note"))


def _choose_sample(objects: Sequence[CardObject], count: int) -> list[CardObject]:
    shown = [item for item in objects if item.photo]
    marked = [item for item in shown if item.marks][:count]
    others = [item for item in shown if item not in marked]
    wanted = min(count - len(marked), len(others))
    step = len(others) / wanted if wanted > 0 else 1.0
    drawn = [others[int(index * step)] for index in range(max(0, wanted))]
    return sorted((*marked, *drawn), key=objects.index)


def _set_column(
    ruler: Ruler, rows: Sequence[_Row], corner: Rect, columns: _Columns
) -> tuple[Block, ...]:
    blocks: list[Block] = []
    y_mm = corner.y_mm
    for row in rows:
        spot = Spot(corner.x_mm, y_mm, columns.width_mm, 1)
        if row.item is None:
            blocks.append(set_text(ruler, row.heading, _HEADING, spot, "layer"))
        else:
            blocks.extend(_set_entry(ruler, row.item, spot, columns))
        y_mm += row.height_mm
    return tuple(blocks)


def _set_entry(ruler: Ruler, item: CardObject, spot: Spot, columns: _Columns) -> tuple[Block, ...]:
    number_spot = Spot(spot.x_mm, spot.y_mm, columns.number_mm)
    number = set_number(ruler, item.object_number, _NUMBER, number_spot, "object-number")
    x_mm = spot.x_mm + columns.number_mm + 1.2
    marks: list[Block] = []
    for mark, words in item.marks[:MARKS_BESIDE]:
        marks.append(
            MarkBlock("object-mark", Rect(x_mm, spot.y_mm, _MARK_MM, _MARK_MM), mark, words)
        )
        x_mm += _MARK_MM + 0.6
    words = f"{item.place}  {item.title}" if item.place else item.title
    down_mm = (_NUMBER.leading_mm - _TITLE.leading_mm) / 2
    title_spot = Spot(x_mm, spot.y_mm + down_mm, spot.x_mm + columns.width_mm - x_mm, 1)
    return (number, *marks, set_text(ruler, words, _TITLE, title_spot, "caption"))
