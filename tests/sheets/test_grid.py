from __future__ import annotations

import pytest

from service.errors import StockError
from service.geometry import Size
from service.sheets.grid import Grid, centred_stock
from service.sheets.stock import Medium

GRID = Grid(columns=3, rows=2, label=Size(20, 10), pitch=Size(25, 12))


def test_the_block_spans_labels_and_gaps() -> None:
    """Three labels of 20 mm at a pitch of 25 mm span 70 mm."""
    assert GRID.block == Size(70, 22)


def test_stands_in_the_middle() -> None:
    """The margins left and right are equal, and those above and below."""
    stock = centred_stock("Mine", Size(100, 50), GRID, radius_mm=0, medium=Medium.CARD)
    assert (stock.left_mm, stock.top_mm) == (15, 14)


def test_refuses_a_block_larger_than_the_page() -> None:
    """What sticks out on both sides is said of the last column, not of a negative margin."""
    with pytest.raises(StockError) as trouble:
        centred_stock("Mine", Size(60, 50), GRID, radius_mm=0, medium=Medium.CARD)
    assert trouble.value.measure == "the last column"
