"""The ruler sheet as a page: crosses with their letters, and the words that say how to measure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from service.geometry import Rect, Size
from service.pages.page import Align, Block, Page, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.stack import bottom_of
from service.pages.setting.text import Spot, set_text
from service.printed import to_print
from service.sheets.calibration.readings import LEAST_CROSSES
from service.sheets.calibration.ruler_sheet import (
    ARM_MM,
    LINE_MM,
    Cross,
    bar_length_mm,
    bar_lines,
    cross_lines,
    crosses_on,
)

KIND = "ruler-sheet"

_TITLE = TextStyle(14.0, weight=700)
_CAPTION = TextStyle(8.0, weight=600, align=Align.CENTRE)
_LETTER = TextStyle(13.0, weight=700, align=Align.CENTRE)
_LETTER_MM = 7.0
_GAP_MM = 1.6
_TOP_MM = 28.0

_PRINT = to_print(
    "1. Print this sheet on plain paper from the printer and tray it is for, at 100 % (\u201cactual"
    " size\u201d), never fitted to the page. The bar below must be {bar:g} mm long; if it is more"
    " than 3\N{NO-BREAK SPACE}mm off, the size was changed: print again."
)
_MEASURE = to_print(
    "2. Take an ordinary ruler. For each cross measure ACROSS: from the LEFT edge of the paper to"
    " the middle of the cross; and DOWN: from the TOP edge of the paper to the middle of the cross;"
    " in mm, to a quarter of a millimetre. Measure {which}."
)
_READ = to_print(
    "3. Read your own ruler. The ticks at the crosses only help to lay it straight: they move with"
    " the print."
)
_TYPE = to_print("4. Type: calibrate enter --printer NAME A=across,down B=across,down and so on.")


@dataclass(frozen=True, slots=True)
class _Room:
    """How the words stand on a size of paper, clear of the crosses."""

    side_mm: float
    words: TextStyle
    row_mm: float


_LARGE = _Room(28.0, TextStyle(11.0), 9.0)
_MIDDLE = _Room(28.0, TextStyle(9.0), 6.5)
_SMALL = _Room(8.0, TextStyle(7.2), 5.0)
"""Without crosses half way down, the words have the width of the paper."""
_LARGE_MM = 270.0


def ruler_page(page: Size, ruler: Ruler) -> Page:
    """Set the ruler sheet for a size of paper; it is printed upright and without correction."""
    crosses = crosses_on(page)
    blocks = [*_words(page, ruler, crosses)]
    for cross in crosses:
        blocks.append(_letter(cross, page, ruler))
        blocks.extend(_line(rect) for rect in cross_lines(cross))
    return Page(KIND, "", to_print("Ruler sheet"), 1, 1, page, tuple(blocks))


def _words(page: Size, ruler: Ruler, crosses: Sequence[Cross]) -> Iterator[Block]:
    """Set title, steps, check bar and table, one below the other."""
    few = len(crosses) <= LEAST_CROSSES
    room = _SMALL if few else _LARGE if page.height_mm >= _LARGE_MM else _MIDDLE
    which = (
        to_print("all four")
        if few
        else to_print("all {number}, or A to D at the least", number=len(crosses))
    )
    width_mm, y_mm = page.width_mm - 2 * room.side_mm, _TOP_MM
    texts = (to_print("Ruler sheet"), _PRINT, _MEASURE, _READ, _TYPE)
    for text, style in zip(texts, (_TITLE, *[room.words] * len(texts)), strict=False):
        words = text.format(bar=bar_length_mm(page), which=which)
        block = set_text(ruler, words, style, Spot(room.side_mm, y_mm, width_mm), "step")
        yield block
        y_mm = block.rect.bottom_mm + _GAP_MM
    bar = [_line(rect) for rect in bar_lines(page, y_mm + 2 * _GAP_MM)]
    yield from bar
    said = to_print("{page:g} mm", page=bar_length_mm(page))
    label = set_text(ruler, said, _CAPTION, Spot(room.side_mm, bottom_of(bar), width_mm), "bar")
    yield label
    names = [cross.name for cross in crosses]
    yield from _blanks(names, ruler, room, Rect(room.side_mm, label.rect.bottom_mm, width_mm, 0))


def _blanks(names: Sequence[str], ruler: Ruler, room: _Room, above: Rect) -> Iterator[Block]:
    """Set lines to be filled with a pen, each over a hairline, below a rectangle."""
    half_mm = above.width_mm / 2
    rows = [
        (to_print("{name}  across", name=name), to_print("{name}  down", name=name))
        for name in names
    ]
    for number, row in enumerate(
        (
            *rows,
            (to_print("Printer"), to_print("Tray")),
            (to_print("Measured by"), to_print("Date")),
        ),
        start=1,
    ):
        line_mm = above.y_mm + number * room.row_mm
        yield _line(Rect(above.x_mm, line_mm, above.width_mm, LINE_MM))
        for column, words in enumerate(row):
            x_mm, y_mm = above.x_mm + column * half_mm, line_mm - room.words.leading_mm
            yield set_text(ruler, words, room.words, Spot(x_mm, y_mm, half_mm), "blank")


def _letter(cross: Cross, page: Size, ruler: Ruler) -> Block:
    """Set the letter into the quarter of the cross that looks to the middle of the sheet."""
    place, offset_mm = cross.place, ARM_MM / 4
    is_left, is_high = place.x_mm < page.width_mm / 2, place.y_mm < page.height_mm / 2
    x_mm = place.x_mm + (offset_mm if is_left else -offset_mm - _LETTER_MM)
    y_mm = place.y_mm + (offset_mm if is_high else -offset_mm - _LETTER.leading_mm)
    return set_text(ruler, cross.name, _LETTER, Spot(x_mm, y_mm, _LETTER_MM), "cross")


def _line(rect: Rect) -> ShapeBlock:
    return ShapeBlock("line", rect, fill=Shade.BLACK)
