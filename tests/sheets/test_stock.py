from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from service.errors import StartPositionError, StockError
from service.geometry import Insets, Rect, Size
from service.sheets.stock import Medium, Stock

LABELS = Stock(
    name="A4 3x7 63.5x38.1",
    page=Size(210.0, 297.0),
    columns=3,
    rows=7,
    label=Size(63.5, 38.1),
    pitch_x_mm=66.04,
    pitch_y_mm=38.1,
    left_mm=7.21,
    top_mm=15.15,
    radius_mm=2.0,
    medium=Medium.STICKY,
)


def test_positions_run_in_reading_order() -> None:
    """Position 1 is at the top left, the next one to its right, the fourth below the first."""
    assert LABELS.position_rect(1) == Rect(7.21, 15.15, 63.5, 38.1)
    assert LABELS.position_rect(2).x_mm == pytest.approx(73.25)
    assert LABELS.position_rect(4) == Rect(7.21, 53.25, 63.5, 38.1)


@pytest.mark.parametrize("position", [-1, 0, 22])
def test_refuses_positions_off_the_sheet(position: int) -> None:
    """A sheet of 21 positions has no position 0 and none beyond 21."""
    with pytest.raises(StartPositionError, match="21 positions"):
        LABELS.position_rect(position)


def test_printable_area_is_a_sixth_of_an_inch_smaller() -> None:
    """The printer leaves an edge of 1/6 inch, or the edge it is said to leave."""
    assert LABELS.printable_rect().x_mm == pytest.approx(4.233, abs=0.001)
    assert LABELS.printable_rect(Insets(4, 5, 12, 6)) == Rect(6, 4, 199, 281)
    assert replace(LABELS, edge_mm=5).printable_rect() == Rect(5, 5, 200, 287)
    assert replace(LABELS, edge_mm=5).edges == Insets(5, 5, 5, 5)


@pytest.mark.parametrize(
    ("size", "turned_deg"),
    [
        (Size(63.5, 38.1), 0),
        (Size(30, 30), 0),
        (Size(38.1, 63.5), 90),
        (Size(64, 38), None),
        (Size(38.2, 38.2), None),
    ],
)
def test_turns_only_what_would_not_fit(size: Size, turned_deg: int | None) -> None:
    """A page lies upright where it can, turned where it must, and nowhere when too large."""
    assert LABELS.turn_for(size) == turned_deg


@pytest.mark.parametrize(
    ("changes", "measure"),
    [
        ({"name": " "}, "name"),
        ({"columns": 0}, "columns"),
        ({"rows": -1}, "rows"),
        ({"columns": 100, "rows": 11}, "columns x rows"),
        ({"page": Size(0, 297)}, "page width"),
        ({"page": Size(210, -1)}, "page height"),
        ({"page": Size(210, 6000)}, "page height"),
        ({"page": Size(math.nan, 297)}, "page width"),
        ({"label": Size(-63.5, 38.1)}, "label width"),
        ({"label": Size(63.5, 0)}, "label height"),
        ({"pitch_x_mm": math.inf}, "pitch x"),
        ({"pitch_y_mm": 0.0}, "pitch y"),
        ({"left_mm": -0.1}, "left"),
        ({"top_mm": math.nan}, "top"),
        ({"radius_mm": -1.0}, "radius"),
        ({"edge_mm": -1.0}, "edge"),
        ({"radius_mm": 20.0}, "radius"),
        ({"pitch_x_mm": 63.4}, "pitch x"),
        ({"pitch_y_mm": 38.0}, "pitch y"),
        ({"left_mm": 14.5}, "the last column"),
        ({"top_mm": 30.4}, "the last row"),
        ({"columns": 4}, "the last column"),
        ({"rows": 8}, "the last row"),
    ],
)
def test_refuses_impossible_sheets(changes: dict[str, Any], measure: str) -> None:
    """A sheet that cannot exist is refused, and the error names the measure."""
    with pytest.raises(StockError) as trouble:
        replace(LABELS, **changes)
    assert trouble.value.measure == measure


def test_a_single_label_needs_no_pitch() -> None:
    """With one column and one row the pitch says nothing, so it is not held against the label."""
    roll = replace(LABELS, columns=1, rows=1, pitch_x_mm=1.0, pitch_y_mm=1.0)
    assert roll.positions == 1
