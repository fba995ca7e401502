"""Where a face stands on a sheet, in the coordinates of PDF.

PDF counts in points from the bottom left corner (ISO 32000-1, 8.3). A matrix of six numbers takes
a point of the face to a point of the sheet.
"""

from __future__ import annotations

from collections.abc import Iterable

from service.geometry import Point, Rect, Size
from service.render.compose.matrix import Matrix
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
