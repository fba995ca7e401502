"""Where to send ink so that a printer puts it where it belongs."""

from __future__ import annotations

import math
from dataclasses import dataclass

from service.geometry import Point, Rect

_FLAT = 1e-9
"""A map that shrinks areas below this share cannot be turned round."""


@dataclass(frozen=True, slots=True)
class Correction:
    """An affine map of the sheet, in mm from its top left corner, y down.

    The point (x, y) is sent to (xx x + xy y + shift_x_mm, yx x + yy y + shift_y_mm).
    """

    xx: float = 1.0
    xy: float = 0.0
    yx: float = 0.0
    yy: float = 1.0
    shift_x_mm: float = 0.0
    shift_y_mm: float = 0.0

    @property
    def is_none(self) -> bool:
        """Whether every point stays where it is."""
        return self == NO_CORRECTION

    @property
    def scale_x_ratio(self) -> float:
        """How long a level millimetre becomes."""
        return math.hypot(self.xx, self.yx)

    @property
    def scale_y_ratio(self) -> float:
        """How long an upright millimetre becomes."""
        return math.hypot(self.xy, self.yy)

    @property
    def rotation_deg(self) -> float:
        """How far the sheet is turned, clockwise: the mean of its level and its upright lines."""
        return (self._level_deg + self._upright_deg) / 2

    @property
    def skew_deg(self) -> float:
        """How far a right angle is off: level lines clockwise against upright ones."""
        return self._level_deg - self._upright_deg

    @property
    def _level_deg(self) -> float:
        return math.degrees(math.atan2(self.yx, self.xx))

    @property
    def _upright_deg(self) -> float:
        return math.degrees(math.atan2(-self.xy, self.yy))

    def moved(self, point: Point) -> Point:
        """Give where a point of the sheet is sent."""
        return Point(
            self.xx * point.x_mm + self.xy * point.y_mm + self.shift_x_mm,
            self.yx * point.x_mm + self.yy * point.y_mm + self.shift_y_mm,
        )

    def corners(self, rect: Rect) -> tuple[Point, Point, Point, Point]:
        """Give where the corners of a rectangle are sent: top left, top right, bottom ones."""
        top_left, top_right = Point(rect.x_mm, rect.y_mm), Point(rect.right_mm, rect.y_mm)
        bottom_left = Point(rect.x_mm, rect.bottom_mm)
        bottom_right = Point(rect.right_mm, rect.bottom_mm)
        return (
            self.moved(top_left),
            self.moved(top_right),
            self.moved(bottom_left),
            self.moved(bottom_right),
        )

    def inside(self, rect: Rect) -> Rect:
        """Give an upright rectangle that lies wholly in what a rectangle becomes.

        Meant for maps that turn by a few degrees at most.
        """
        top_left, top_right, bottom_left, bottom_right = self.corners(rect)
        left_mm = max(top_left.x_mm, bottom_left.x_mm)
        top_mm = max(top_left.y_mm, top_right.y_mm)
        right_mm = min(top_right.x_mm, bottom_right.x_mm)
        bottom_mm = min(bottom_left.y_mm, bottom_right.y_mm)
        return Rect(left_mm, top_mm, right_mm - left_mm, bottom_mm - top_mm)

    def inverse(self) -> Correction:
        """Give the map that sends every point back.

        Raises:
            ValueError: When the map flattens the sheet.
        """
        area_ratio = self.xx * self.yy - self.xy * self.yx
        if abs(area_ratio) < _FLAT:
            msg = "a map that flattens the sheet cannot be turned round"
            raise ValueError(msg)
        xx, xy = self.yy / area_ratio, -self.xy / area_ratio
        yx, yy = -self.yx / area_ratio, self.xx / area_ratio
        return Correction(
            xx,
            xy,
            yx,
            yy,
            -(xx * self.shift_x_mm + xy * self.shift_y_mm),
            -(yx * self.shift_x_mm + yy * self.shift_y_mm),
        )


NO_CORRECTION = Correction()
