from __future__ import annotations

import pytest

from service.geometry import Point, Rect, Size
from service.render.compose.place import (
    box_pt,
    corrected_rect,
    correction_matrix,
    placed_matrix,
    stroke,
    written,
)
from service.render.matrix import Matrix, moved
from service.sheets.correction import NO_CORRECTION, Correction
from service.units import mm_from_points, points_from_mm

PAGE = Size(210.0, 297.0)
RECT = Rect(20.0, 30.0, 50.0, 40.0)


def on_page(matrix: Matrix, x_mm: float, y_mm: float, *, face: Size) -> tuple[float, float]:
    """Tell where a point of the face, from its top left corner, comes to lie on the page."""
    *_, x_pt, y_pt = moved(matrix, points_from_mm(x_mm), points_from_mm(face.height_mm - y_mm))
    return (mm_from_points(x_pt), PAGE.height_mm - mm_from_points(y_pt))


@pytest.mark.parametrize(
    ("turned_deg", "top_left", "top_right"),
    [
        pytest.param(0, (20.0, 30.0), (70.0, 30.0), id="upright"),
        pytest.param(90, (70.0, 30.0), (70.0, 70.0), id="its top looks right"),
        pytest.param(180, (70.0, 70.0), (20.0, 70.0), id="upside down"),
        pytest.param(270, (20.0, 70.0), (20.0, 30.0), id="its top looks left"),
    ],
)
def test_corners_go_where_they_should(
    turned_deg: int, top_left: tuple[float, float], top_right: tuple[float, float]
) -> None:
    """Turned clockwise by quarters, the face still fills its rectangle."""
    face = RECT.size if turned_deg % 180 == 0 else RECT.size.turned
    matrix = placed_matrix(RECT, page=PAGE, turned_deg=turned_deg)
    assert on_page(matrix, 0.0, 0.0, face=face) == pytest.approx(top_left)
    assert on_page(matrix, face.width_mm, 0.0, face=face) == pytest.approx(top_right)


def test_other_turns_are_refused() -> None:
    """A face stands level or upright, never askew."""
    with pytest.raises(ValueError, match="45 degrees"):
        placed_matrix(RECT, page=PAGE, turned_deg=45)


@pytest.mark.parametrize(
    ("value_pt", "expected"),
    [(1.0, "1"), (-0.5, "-0.5"), (100.0, "100"), (1 / 3, "0.333333"), (1e-9, "0")],
)
def test_numbers_are_written_plainly(value_pt: float, expected: str) -> None:
    """Six decimals, no exponent and no trailing noughts."""
    assert written([value_pt]) == expected


def test_boxes_and_strokes_count_from_below() -> None:
    """72 points are 25.4 mm; y grows upwards from the bottom of the page."""
    assert box_pt(Rect(0.0, 271.6, 25.4, 25.4), page=PAGE) == pytest.approx((0, 0, 72, 72))
    assert stroke(Point(25.4, 297.0), Point(25.4, 271.6), page=PAGE) == "72 0 m 72 72 l"


@pytest.mark.parametrize(
    "correction",
    [
        pytest.param(NO_CORRECTION, id="none"),
        pytest.param(Correction(shift_x_mm=1.5, shift_y_mm=-0.75), id="shifted"),
        pytest.param(Correction(1.01, 0.002, -0.003, 0.99, 0.4, -0.6), id="all at once"),
    ],
)
def test_a_correction_means_the_same_in_points(correction: Correction) -> None:
    """Every point of the page goes where the correction, counted from the top, sends it."""
    matrix = correction_matrix(correction, page=PAGE)
    for point in (Point(0.0, 0.0), Point(210.0, 0.0), Point(30.0, 200.0)):
        sent = correction.moved(point)
        assert on_page(matrix, point.x_mm, point.y_mm, face=PAGE) == pytest.approx(
            (sent.x_mm, sent.y_mm), abs=1e-9
        )


def test_a_corrected_rectangle_holds_all_its_corners() -> None:
    """Turned a little, a rectangle reaches further on each side; without a turn it is the same."""
    assert corrected_rect(RECT, NO_CORRECTION) == RECT
    turned = Correction(1.0, -0.1, 0.1, 1.0)
    assert corrected_rect(RECT, turned) == Rect(13.0, 32.0, 54.0, 45.0)
