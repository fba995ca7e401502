"""Where a face stands on a sheet, in the coordinates of PDF.

PDF counts in points from the bottom left corner (ISO 32000-1, 8.3). A matrix of six numbers takes
a point of the face to a point of the sheet.
"""

from __future__ import annotations

from collections.abc import Iterable

from service.geometry import Point, Rect, Size
from service.render.matrix import Matrix
from service.sheets.correction import Correction
from service.units import points_from_mm

# Turns clockwise as the sheet is seen: cosine and sine, exact.
_TURNS = {0: (1, 0), 90: (0, -1), 180: (-1, 0), 270: (0, 1)}


def placed_matrix(rect: Rect, *, page: Size, turned_deg: int) -> Matrix:
    """Give the matrix that lays a face into `rect` of a page, turned clockwise by quarter turns.

    `rect` is as large as the turned face.

    Raises:
        ValueError: The turn is not 0, 90, 180 or 270 degrees.
    """
    if turned_deg not in _TURNS:
        message = f"turned by {turned_deg} degrees"
        raise ValueError(message)
    cosine, sine = _TURNS[turned_deg]
    left_pt = points_from_mm(rect.x_mm)
    bottom_pt = points_from_mm(page.height_mm - rect.bottom_mm)
    # The face's own corner goes to that corner of the rectangle which keeps the face inside it.
    x_pt = left_pt + (points_from_mm(rect.width_mm) if cosine < 0 or sine > 0 else 0.0)
    y_pt = bottom_pt + (points_from_mm(rect.height_mm) if cosine < 0 or sine < 0 else 0.0)
    return (cosine, sine, -sine, cosine, x_pt, y_pt)


def correction_matrix(correction: Correction, *, page: Size) -> Matrix:
    """Give the matrix that sends every point of a page where a correction sends it."""
    return (
        correction.xx,
        -correction.yx,
        -correction.xy,
        correction.yy,
        points_from_mm(correction.xy * page.height_mm + correction.shift_x_mm),
        points_from_mm((1.0 - correction.yy) * page.height_mm - correction.shift_y_mm),
    )


def corrected_rect(rect: Rect, correction: Correction) -> Rect:
    """Give the upright rectangle around what a rectangle becomes."""
    if correction.is_none:
        return rect
    corners = correction.corners(rect)
    left_mm = min(corner.x_mm for corner in corners)
    top_mm = min(corner.y_mm for corner in corners)
    right_mm = max(corner.x_mm for corner in corners)
    bottom_mm = max(corner.y_mm for corner in corners)
    return Rect(left_mm, top_mm, right_mm - left_mm, bottom_mm - top_mm)


def box_pt(rect: Rect, *, page: Size) -> tuple[float, float, float, float]:
    """Give left, bottom, right and top of a rectangle of the page."""
    return (
        points_from_mm(rect.x_mm),
        points_from_mm(page.height_mm - rect.bottom_mm),
        points_from_mm(rect.right_mm),
        points_from_mm(page.height_mm - rect.y_mm),
    )


def stroke(start: Point, end: Point, *, page: Size) -> str:
    """Write a line from one point of the page to another, still to be stroked."""
    ends = [
        written((points_from_mm(point.x_mm), points_from_mm(page.height_mm - point.y_mm)))
        for point in (start, end)
    ]
    return f"{ends[0]} m {ends[1]} l"


def written(values_pt: Iterable[float]) -> str:
    """Write numbers with six decimals, a millionth of a point: far below 0.001 mm."""
    return " ".join(f"{value:.6f}".rstrip("0").rstrip(".") for value in values_pt)
