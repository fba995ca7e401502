"""Where the faces of a sheet belong, and whether those of a file stand there.

A matrix takes a point of the face, in points from its bottom left corner, to a point of the page.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import product

from service.geometry import Insets, Point, Rect, Size
from service.render.proof.places import at
from service.sheets.correction import NO_CORRECTION, Correction
from service.sheets.impose import Placement
from service.sheets.stock import Stock
from service.units import mm_from_points, points_from_mm

Matrix = tuple[float, ...]
"""Six numbers, as `cm` takes them."""

EXACT_MM = 0.001
_EACH_PT = points_from_mm(EXACT_MM / 2)
"""What place and turn may each be off, so that both together stay within what is promised."""
_REACH_MM = 0.01
"""Slack at the edge of what a printer reaches, which is known far worse; ours."""
_POINTS_PER_MM = points_from_mm(1.0)


class Places:
    """The positions of a stock, sent where a printer puts them right."""

    def __init__(self, stock: Stock, correction: Correction, edges: Insets | None) -> None:
        """Work out what all sheets of a kind share; `edges` are left white by the printer."""
        self._height_mm = stock.page.height_mm
        self._correction = None if correction == NO_CORRECTION else correction
        self._dies = [stock.position_rect(number + 1) for number in range(stock.positions)]
        self._reach = stock.printable_rect(edges)
        # The page counts upwards and the correction downwards: its slants change their sign.
        c = correction
        self._turns = {0: (c.xx, -c.yx, -c.xy, c.yy), 90: (c.xy, -c.yy, c.xx, -c.yx)}

    def faults(self, matrix: Matrix, placement: Placement, size: Size, ink: Rect) -> Iterator[str]:
        """Say what is wrong with the place of a face of this size, whose ink takes `ink` of it.

        The ink must be sent where the printer prints, and must land there as well.
        """
        is_turned, is_at = self._is_turned(matrix, placement), self._is_at(matrix, placement)
        is_filled = _fills(size, placement)
        is_inside = _holds(self._dies[placement.position - 1], placement.rect, EXACT_MM)
        landing = _on_sheet(ink, placement)
        sent = self._sent(landing)
        is_reached = _holds(self._reach, sent, _REACH_MM) and (
            sent is landing or _holds(self._reach, landing, _REACH_MM)
        )
        if is_turned and is_at and is_filled and is_inside and is_reached:
            return
        here = f"the face {placement.key} on position {placement.position}"
        if not is_turned:
            yield f"{here} is scaled or turned otherwise than by {placement.turned_deg} degrees"
        if not is_at:
            found, wanted = self._drawn(matrix, placement), self._sent(placement.rect)
            yield f"{here} lies {at(found)} instead of {at(wanted)}"
        if not is_filled:
            yield f"{here} has another size than its room, {at(placement.rect)}"
        if not is_inside:
            yield f"{here} leaves its die line"
        if not is_reached:
            yield f"{here} has ink beyond the printer's reach, {at(landing)}"

    def _is_turned(self, matrix: Matrix, placement: Placement) -> bool:
        turned = self._turns.get(placement.turned_deg)
        if turned is None:
            return False
        a, b, c, d = turned
        off = abs(matrix[0] - a) + abs(matrix[1] - b) + abs(matrix[2] - c) + abs(matrix[3] - d)
        rect = placement.rect
        return off * (rect.width_mm + rect.height_mm) * _POINTS_PER_MM <= _EACH_PT

    def _is_at(self, matrix: Matrix, placement: Placement) -> bool:
        """Look at the face's own origin, its bottom left corner."""
        rect = placement.rect
        x_mm = rect.x_mm
        y_mm = rect.y_mm if placement.turned_deg else rect.y_mm + rect.height_mm
        if self._correction is not None:
            moved = self._correction.moved(Point(x_mm, y_mm))
            x_mm, y_mm = moved.x_mm, moved.y_mm
        return (
            abs(matrix[4] - x_mm * _POINTS_PER_MM) <= _EACH_PT
            and abs(matrix[5] - (self._height_mm - y_mm) * _POINTS_PER_MM) <= _EACH_PT
        )

    def _sent(self, rect: Rect) -> Rect:
        """Give the rectangle around what is sent for a rectangle of the sheet."""
        if self._correction is None:
            return rect
        return _around(self._correction.corners(rect))

    def _drawn(self, matrix: Matrix, placement: Placement) -> Rect:
        """Give the rectangle around a face as the file draws it."""
        a, b, c, d, e, f = matrix
        size = placement.rect.size.turned if placement.turned_deg else placement.rect.size
        corners = product((0.0, size.width_mm), (0.0, size.height_mm))
        e_mm, f_mm = mm_from_points(e), mm_from_points(f)
        return _around(
            Point(a * u_mm + c * v_mm + e_mm, self._height_mm - (b * u_mm + d * v_mm + f_mm))
            for u_mm, v_mm in corners
        )


def _fills(size: Size, placement: Placement) -> bool:
    rect = placement.rect
    wide_mm, high_mm = size.width_mm, size.height_mm
    if placement.turned_deg:
        wide_mm, high_mm = high_mm, wide_mm
    return abs(rect.width_mm - wide_mm) <= EXACT_MM and abs(rect.height_mm - high_mm) <= EXACT_MM


def _on_sheet(ink: Rect, placement: Placement) -> Rect:
    """Give where a part of a face lies on the sheet."""
    rect = placement.rect
    if not placement.turned_deg:
        return Rect(rect.x_mm + ink.x_mm, rect.y_mm + ink.y_mm, ink.width_mm, ink.height_mm)
    # The face's top looks to the right: its left edge is on top.
    x_mm, y_mm = rect.right_mm - ink.y_mm - ink.height_mm, rect.y_mm + ink.x_mm
    return Rect(x_mm, y_mm, ink.height_mm, ink.width_mm)


def _holds(outer: Rect, inner: Rect, slack_mm: float) -> bool:
    """Tell what `Rect.holds` tells, in a third of its time: this is asked of every face."""
    x_mm, y_mm = inner.x_mm - outer.x_mm + slack_mm, inner.y_mm - outer.y_mm + slack_mm
    return (
        x_mm >= 0
        and y_mm >= 0
        and x_mm + inner.width_mm <= outer.width_mm + 2 * slack_mm
        and y_mm + inner.height_mm <= outer.height_mm + 2 * slack_mm
    )


def _around(points: Iterable[Point]) -> Rect:
    xs_mm, ys_mm = zip(*((point.x_mm, point.y_mm) for point in points), strict=True)
    x_mm, y_mm = min(xs_mm), min(ys_mm)
    return Rect(x_mm, y_mm, max(xs_mm) - x_mm, max(ys_mm) - y_mm)
