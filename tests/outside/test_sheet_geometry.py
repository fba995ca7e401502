"""Paper and sheets against ISO 216, the inch sizes and the figures of common label grids."""

from __future__ import annotations

import pytest

from service.geometry import Rect, Size
from service.sheets.impose import Face, impose_pages
from service.sheets.stock import Stock
from service.sheets.stocks import (
    A4,
    A5,
    A6,
    HALF_LETTER,
    LETTER,
    QUARTER_LETTER,
    STOCKS,
    find_stock,
)

# The grids are from memory, margins worked out by hand for labels in the middle of the page:
# columns, rows, label width and height, pitch, left, top; mm.
A4_GRIDS = """
1 1 199.6 289.1 -      5.20 3.95
1 2 199.6 143.5 -      5.20 5.00
2 2 99.1  139.0 101.64 4.63 9.50
2 3 99.1  93.1  101.64 4.63 8.85
2 4 99.1  67.7  101.64 4.63 13.10
2 5 99.1  57.0  101.64 4.63 6.00
2 6 99.1  42.3  101.64 4.63 21.60
2 7 99.1  38.1  101.64 4.63 15.15
2 8 99.1  33.9  101.64 4.63 12.90
3 4 63.5  72.0  66.04  7.21 4.50
3 6 63.5  46.6  66.04  7.21 8.70
3 7 63.5  38.1  66.04  7.21 15.15
3 8 63.5  33.9  66.04  7.21 12.90
4 10 45.7 25.4  48.26  9.76 21.50
4 12 45.7 21.2  48.26  9.76 21.30
5 13 38.1 21.2  40.64  4.67 10.70
1 2 210   148.5 -      0    0
2 2 105   148.5 105    0    0
2 4 105   74    105    0    0.5
2 8 105   37    105    0    0.5
3 7 70    42.4  70     0    0.1
3 8 70    37    70     0    0.5
4 10 52.5 29.7  52.5   0    0
"""
# The same in inches.
LETTER_GRIDS = """
3 10 2.625 1         2.75   0.1875  0.5
2 10 4     1         4.1875 0.15625 0.5
2 7  4     1.3333333 4.1875 0.15625 0.8333333
2 5  4     2         4.1875 0.15625 0.5
2 3  4     3.3333333 4.1875 0.15625 0.5
4 20 1.75  0.5       2.0625 0.28125 0.5
4 15 1.75  0.6666667 2.0625 0.28125 0.5
1 2  8.5   5.5       -      0       0
2 2  4.25  5.5       4.25   0       0
"""
# Labels on rolls, width and length in mm; common practice, no source.
ROLLS = {
    "Roll 102x152": (4 * 25.4, 6 * 25.4),
    "Roll 102x76": (4 * 25.4, 3 * 25.4),
    "Roll 102x51": (4 * 25.4, 2 * 25.4),
    "Roll 100x150": (100, 150),
    "Roll 100x50": (100, 50),
    "Roll 62x100": (62, 100),
}
MM_PER_INCH = 25.4  # By definition; the check does not borrow it from the code it checks.

Grid = tuple[float | None, ...]


def grids(table: str) -> list[Grid]:
    """Read a table; a dash stands for a pitch that does not matter."""
    lines = table.strip().split("\n")
    return [tuple(None if cell == "-" else float(cell) for cell in line.split()) for line in lines]


def stocks_on(page: Size) -> list[Stock]:
    """Give the sticky stocks on a page, in the order of the tables."""
    return [stock for stock in STOCKS if stock.page == page and stock.medium == "sticky"]


def measured(stock: Stock, mm_per_unit: float, *, has_pitch: bool) -> Grid:
    """Read a stock back as a line of the table."""
    return (
        stock.columns,
        stock.rows,
        stock.label.width_mm / mm_per_unit,
        stock.label.height_mm / mm_per_unit,
        stock.pitch_x_mm / mm_per_unit if has_pitch else None,
        stock.left_mm / mm_per_unit,
        stock.top_mm / mm_per_unit,
    )


@pytest.mark.parametrize(
    ("page", "table", "mm_per_unit", "tolerance"),
    [(A4, A4_GRIDS, 1.0, 0.005), (LETTER, LETTER_GRIDS, MM_PER_INCH, 0.00005)],
    ids=["A4", "Letter"],
)
def test_grids(page: Size, table: str, mm_per_unit: float, tolerance: float) -> None:
    """Every grid has the sizes, pitch and margins of the table, and rows that touch."""
    expected = grids(table)
    stocks = stocks_on(page)
    assert len(stocks) == len(expected)
    for stock, line in zip(stocks, expected, strict=True):
        read = measured(stock, mm_per_unit, has_pitch=line[4] is not None)
        assert read == pytest.approx(line, abs=tolerance), stock.name
        assert stock.pitch_y_mm == stock.label.height_mm


@pytest.mark.parametrize(
    ("page", "width_mm", "height_mm"),
    [
        (A4, 210, 297),
        (A5, 148, 210),
        (A6, 105, 148),
        (LETTER, 215.9, 279.4),
        (HALF_LETTER, 139.7, 215.9),
        (QUARTER_LETTER, 107.95, 139.7),
    ],
)
def test_paper_sizes(page: Size, width_mm: float, height_mm: float) -> None:
    """ISO 216 and the inch sizes, from memory."""
    assert page.width_mm == pytest.approx(width_mm, abs=0.001)
    assert page.height_mm == pytest.approx(height_mm, abs=0.001)


@pytest.mark.parametrize("name", ROLLS)
def test_rolls(name: str) -> None:
    """A page of a roll is its label, as large as it is sold; each page is imposed alone."""
    stock = find_stock(name, STOCKS)
    assert (stock.page.width_mm, stock.page.height_mm) == pytest.approx(ROLLS[name], abs=0.001)
    sheets = impose_pages([Face("x", stock.label), Face("y", stock.label)], stock)
    whole = Rect(0, 0, stock.page.width_mm, stock.page.height_mm)
    assert [place.rect for sheet in sheets for place in sheet.placements] == [whole, whole]
    assert [sheet.marks for sheet in sheets] == [(), ()]


def test_no_roll_is_left_out() -> None:
    """The list of rolls is whole."""
    assert {stock.name for stock in STOCKS if stock.name.startswith("Roll")} == set(ROLLS)


def test_each_size_is_half_the_next() -> None:
    """ISO 216 halves the long side and rounds down to whole millimetres."""
    for large, small in ((A4, A5), (A5, A6)):
        assert small == Size(large.height_mm // 2, large.width_mm)


def test_last_label_of_an_a4_sheet() -> None:
    """Label 21 of 3 x 7 ends as far from the right and bottom edges as the first begins."""
    stock = find_stock("A4 3x7 63.5x38.1", STOCKS)
    rect = stock.position_rect(21)
    assert rect.x_mm == pytest.approx(139.29, abs=0.005)
    assert rect.y_mm == pytest.approx(243.75, abs=0.005)
    assert rect.right_mm == pytest.approx(202.79, abs=0.005)
    assert rect.bottom_mm == pytest.approx(281.85, abs=0.005)
    assert 210 - rect.right_mm == pytest.approx(7.21, abs=0.005)
    assert 297 - rect.bottom_mm == pytest.approx(15.15, abs=0.005)


def test_last_label_of_a_letter_sheet() -> None:
    """Label 30 of 3 x 10 lies at 5.6875 and 9.5 inches."""
    rect = find_stock("Letter 3x10 2.625x1 in", STOCKS).position_rect(30)
    assert rect.x_mm / MM_PER_INCH == pytest.approx(5.6875, abs=0.00005)
    assert rect.y_mm / MM_PER_INCH == pytest.approx(9.5, abs=0.00005)
    assert rect.right_mm / MM_PER_INCH == pytest.approx(8.3125, abs=0.00005)


def test_full_bleed_sheets_leave_nothing_over() -> None:
    """The four labels of 105 x 148.5 mm cover an A4 page to its edges."""
    stock = find_stock("A4 2x2 105x148.5", STOCKS)
    (sheet,) = impose_pages([Face("x", stock.label)] * 4, stock)
    assert [place.rect for place in sheet.placements] == [
        Rect(0, 0, 105, 148.5),
        Rect(105, 0, 105, 148.5),
        Rect(0, 148.5, 105, 148.5),
        Rect(105, 148.5, 105, 148.5),
    ]
