"""The stocks everybody has: label grids and plain card on A4 and Letter, and rolls of labels.

Sizes of the grids are from memory and common to the trade; the block of labels stands in the middle
of the page, which real sheets do to a few tenths of a millimetre. Users type their own sheets.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from service.errors import UnknownStockError
from service.geometry import Size
from service.sheets.grid import Grid, centred_stock
from service.sheets.stock import Medium, Stock
from service.units import mm_from_inches

A4 = Size(210.0, 297.0)
A5 = Size(148.0, 210.0)
A6 = Size(105.0, 148.0)
"""ISO 216."""

LETTER = Size(mm_from_inches(8.5), mm_from_inches(11.0))
HALF_LETTER = Size(mm_from_inches(5.5), mm_from_inches(8.5))
QUARTER_LETTER = Size(mm_from_inches(4.25), mm_from_inches(5.5))
"""ANSI/ASME Y14.1, size A; from memory."""

PAGES = {"A4": A4, "A5": A5, "A6": A6, "Letter": LETTER}

_RADIUS_MM = 2.0
_RADIUS_IN = 1 / 16
"""Corners of rounded labels: common practice, no source."""

_PITCH_X_MM = {99.1: 101.64, 63.5: 66.04, 45.7: 48.26, 38.1: 40.64}
"""From one column to the next, by the width of the label; the same on every A4 sheet."""

# Columns, rows, label width and height; rows touch each other.
_A4_ROUNDED = (
    (1, 1, 199.6, 289.1),
    (1, 2, 199.6, 143.5),
    (2, 2, 99.1, 139.0),
    (2, 3, 99.1, 93.1),
    (2, 4, 99.1, 67.7),
    (2, 5, 99.1, 57.0),
    (2, 6, 99.1, 42.3),
    (2, 7, 99.1, 38.1),
    (2, 8, 99.1, 33.9),
    (3, 4, 63.5, 72.0),
    (3, 6, 63.5, 46.6),
    (3, 7, 63.5, 38.1),
    (3, 8, 63.5, 33.9),
    (4, 10, 45.7, 25.4),
    (4, 12, 45.7, 21.2),
    (5, 13, 38.1, 21.2),
)
_A4_FULL_BLEED = (
    (1, 2, 210.0, 148.5),
    (2, 2, 105.0, 148.5),
    (2, 4, 105.0, 74.0),
    (2, 8, 105.0, 37.0),
    (3, 7, 70.0, 42.4),
    (3, 8, 70.0, 37.0),
    (4, 10, 52.5, 29.7),
)

# Columns, rows, label width and height in inches, and the pitch of the columns.
_LETTER_ROUNDED = (
    (3, 10, 2.625, 1.0, 2.75),
    (2, 10, 4.0, 1.0, 4.1875),
    (2, 7, 4.0, 4 / 3, 4.1875),
    (2, 5, 4.0, 2.0, 4.1875),
    (2, 3, 4.0, 10 / 3, 4.1875),
    (4, 20, 1.75, 0.5, 2.0625),
    (4, 15, 1.75, 2 / 3, 2.0625),
)
_LETTER_FULL_BLEED = ((1, 2, 8.5, 5.5, 8.5), (2, 2, 4.25, 5.5, 4.25))

# Name, page, columns, rows, card as it lies on the page.
_CARDS = (
    ("A4 card", A4, 1, 1, A4),
    ("A5 card", A5, 1, 1, A5),
    ("A6 card", A6, 1, 1, A6),
    ("Letter card", LETTER, 1, 1, LETTER),
    ("A4 card 2xA5", A4, 1, 2, A5.turned),
    ("A4 card 4xA6", A4, 2, 2, A6),
    ("Letter card 2xhalf", LETTER, 1, 2, HALF_LETTER.turned),
    ("Letter card 4xquarter", LETTER, 2, 2, QUARTER_LETTER),
)

# Page, columns, rows, tag: small cards cut apart by hand, with room for the marks of the knife.
_TAGS = (
    ("A4", 3, 9, Size(60.0, 30.0)),
    ("A4", 2, 5, Size(90.0, 50.0)),
    ("A4", 6, 3, Size(30.0, 90.0)),
    ("A4", 4, 2, Size(45.0, 130.0)),
    ("Letter", 3, 8, Size(60.0, 30.0)),
    ("Letter", 2, 5, Size(90.0, 50.0)),
    ("Letter", 6, 2, Size(30.0, 90.0)),
    ("Letter", 4, 2, Size(45.0, 130.0)),
)
"""Sizes of tags: common practice, no source."""

# Width of the roll and length of a label, those sold in inches to the nearest millimetre in name.
_ROLLS = (
    Size(mm_from_inches(4), mm_from_inches(6)),
    Size(mm_from_inches(4), mm_from_inches(3)),
    Size(mm_from_inches(4), mm_from_inches(2)),
    Size(100.0, 150.0),
    Size(100.0, 50.0),
    Size(62.0, 100.0),
)
_ROLL_EDGE_MM = 1.5
"""What a label printer leaves white; sizes and edge of rolls are common practice, no source.

Label printers have 203 or 300 dots an inch. A module of 0.50 mm is 4 dots at 203 and 6 at 300.
"""


def find_stock(name: str, stocks: Iterable[Stock]) -> Stock:
    """Give the stock of that name; capitals and blanks do not matter.

    Raises:
        UnknownStockError: When no stock is called so.
    """
    known = {_plain(stock.name): stock for stock in stocks}
    if _plain(name) not in known:
        raise UnknownStockError(name, known=[stock.name for stock in known.values()])
    return known[_plain(name)]


def stocks_for(size: Size, medium: Medium, stocks: Iterable[Stock]) -> tuple[Stock, ...]:
    """Give the stocks of a medium that take a page of `size`, turned or not, the snuggest first."""
    fitting = [
        stock for stock in stocks if stock.medium is medium and stock.turn_for(size) is not None
    ]
    return tuple(sorted(fitting, key=lambda stock: stock.label.width_mm * stock.label.height_mm))


def _plain(name: str) -> str:
    return " ".join(name.split()).casefold()


def _a4_labels() -> Iterator[Stock]:
    for radius_mm, rows_of_table in ((_RADIUS_MM, _A4_ROUNDED), (0.0, _A4_FULL_BLEED)):
        for columns, rows, width_mm, height_mm in rows_of_table:
            pitch = Size(_PITCH_X_MM.get(width_mm, width_mm), height_mm)
            grid = Grid(columns, rows, Size(width_mm, height_mm), pitch)
            name = f"A4 {columns}x{rows} {width_mm:g}x{height_mm:g}"
            yield centred_stock(name, A4, grid, radius_mm=radius_mm, medium=Medium.STICKY)


def _letter_labels() -> Iterator[Stock]:
    rounded_mm = mm_from_inches(_RADIUS_IN)
    for radius_mm, rows_of_table in ((rounded_mm, _LETTER_ROUNDED), (0.0, _LETTER_FULL_BLEED)):
        for columns, rows, width, height, pitch_x in rows_of_table:
            label = Size(mm_from_inches(width), mm_from_inches(height))
            grid = Grid(columns, rows, label, Size(mm_from_inches(pitch_x), label.height_mm))
            name = f"Letter {columns}x{rows} {width:.4g}x{height:.4g} in"
            yield centred_stock(name, LETTER, grid, radius_mm=radius_mm, medium=Medium.STICKY)


def _cards() -> Iterator[Stock]:
    for name, page, columns, rows, card in _CARDS:
        grid = Grid(columns, rows, card, card)
        yield centred_stock(name, page, grid, radius_mm=0.0, medium=Medium.CARD)


def _tags() -> Iterator[Stock]:
    for page, columns, rows, tag in _TAGS:
        name = f"{page} card {columns}x{rows} {tag.width_mm:g}x{tag.height_mm:g}"
        grid = Grid(columns, rows, tag, tag)
        yield centred_stock(name, PAGES[page], grid, radius_mm=0.0, medium=Medium.CARD)


def _rolls() -> Iterator[Stock]:
    """Give rolls: each label is a page of its own, never marked for the knife."""
    for label in _ROLLS:
        name = f"Roll {label.width_mm:.0f}x{label.height_mm:.0f}"
        one = Grid(1, 1, label, label)
        roll = centred_stock(name, label, one, radius_mm=_RADIUS_MM, medium=Medium.STICKY)
        yield replace(roll, edge_mm=_ROLL_EDGE_MM)


STOCKS = (*_a4_labels(), *_letter_labels(), *_rolls(), *_cards(), *_tags())
"""Every stock the service brings, labels before card."""
