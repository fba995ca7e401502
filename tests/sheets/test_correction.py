from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.geometry import Point, Rect
from service.sheets.correction import NO_CORRECTION, Correction

SHIFTED = Correction(shift_x_mm=2.0, shift_y_mm=-1.0)


def turned(degrees: float, *, skew_deg: float = 0.0, scale: float = 1.0) -> Correction:
    """Turn clockwise about the top left corner, as the sheet is seen."""
    level, upright = math.radians(degrees + skew_deg / 2), math.radians(degrees - skew_deg / 2)
    return Correction(
        scale * math.cos(level),
        -scale * math.sin(upright),
        scale * math.sin(level),
        scale * math.cos(upright),
    )


@st.composite
def printers(draw: st.DrawFn) -> Correction:
    """Draw an affine printer within what is possible at all."""
    ratios, shears, shifts = st.floats(0.9, 1.1), st.floats(-0.1, 0.1), st.floats(-20, 20)
    return Correction(
        draw(ratios), draw(shears), draw(shears), draw(ratios), draw(shifts), draw(shifts)
    )


@given(printers(), st.floats(0, 500), st.floats(0, 500))
def test_what_is_sent_back_lands_where_it_should(
    printer: Correction, x_mm: float, y_mm: float
) -> None:
    """The inverse undoes a printer at every point, and a printer undoes its inverse."""
    correction = printer.inverse()
    for back in (
        printer.moved(correction.moved(Point(x_mm, y_mm))),
        correction.moved(printer.moved(Point(x_mm, y_mm))),
    ):
        assert (back.x_mm, back.y_mm) == pytest.approx((x_mm, y_mm), abs=1e-9)


@given(printers(), st.floats(0, 1), st.floats(0, 1))
def test_the_inner_rectangle_is_reached(printer: Correction, across: float, down: float) -> None:
    """Every point of the inner rectangle comes from a point of the rectangle it lies in."""
    inner = printer.inside(Rect(0, 0, 210, 297))
    point = Point(inner.x_mm + across * inner.width_mm, inner.y_mm + down * inner.height_mm)
    source = printer.inverse().moved(point)
    assert Rect(0, 0, 210, 297).holds(Rect(source.x_mm, source.y_mm, 0, 0))


def test_a_flat_map_cannot_be_undone() -> None:
    """A map that puts all points on one line has no way back."""
    with pytest.raises(ValueError, match="flattens"):
        Correction(1.0, 2.0, 2.0, 4.0).inverse()


def test_corners_are_sent_one_by_one() -> None:
    """The corners come in reading order."""
    assert SHIFTED.corners(Rect(10, 20, 30, 40)) == (
        Point(12, 19),
        Point(42, 19),
        Point(12, 59),
        Point(42, 59),
    )


@pytest.mark.parametrize(
    ("moved", "expected"),
    [
        (NO_CORRECTION, (1.0, 1.0, 0.0, 0.0)),
        (SHIFTED, (1.0, 1.0, 0.0, 0.0)),
        (Correction(xx=1.005, yy=0.98), (1.005, 0.98, 0.0, 0.0)),
        (turned(1.5, scale=1.01), (1.01, 1.01, 1.5, 0.0)),
        (turned(-0.5, skew_deg=0.3), (1.0, 1.0, -0.5, 0.3)),
    ],
    ids=["none", "shift", "scale", "turn", "skew"],
)
def test_a_map_is_taken_apart(
    moved: Correction, expected: tuple[float, float, float, float]
) -> None:
    """Scale across and down, rotation and skew are those the map was made of."""
    parts = (moved.scale_x_ratio, moved.scale_y_ratio, moved.rotation_deg, moved.skew_deg)
    assert parts == pytest.approx(expected, abs=1e-12)


def test_clockwise_counts_positive() -> None:
    """Turned clockwise, the right end of a level line comes lower."""
    assert turned(1.0).moved(Point(100, 0)).y_mm > 0


def test_only_the_identity_is_none() -> None:
    """A map that moves nothing says so."""
    assert Correction().is_none
    assert not SHIFTED.is_none
