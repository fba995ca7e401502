"""The ruler sheet: crosses at known places, each with rulers, and a bar of known length.

Measured is from the left and from the top edge of the paper for every cross: one rule for all of
them, and unlike a measure from the nearest edge it does not depend on how exactly the paper was cut
(ISO 216 allows 1.5 to 2 mm; from memory). Places and lengths are ours.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from service.geometry import Point, Rect, Size

LINE_MM = 0.1
"""Thickness of every line, its middle at the measure."""
ARM_MM = 10
"""From the middle of a cross to the end of its rulers, which have a tick every millimetre."""

_INSET_MM = 15
_TICK_MM, _FIFTH_TICK_MM = 1.2, 2.4
_WIDE_MM = 140.0
"""Narrower paper has no room for more than the four crosses in the corners."""
_BAR_MM, _SHORT_BAR_MM = 100.0, 50.0
_WIDE_FOR_BAR_MM = 200.0
"""Narrower paper has crosses where a long bar would end."""


@dataclass(frozen=True, slots=True)
class Cross:
    """A cross: its letter, and the place of its middle on the sheet."""

    name: str
    place: Point


def crosses_on(page: Size) -> tuple[Cross, ...]:
    """Give the crosses of a page, the corners first: A and B above, C and D below."""
    left, top = float(_INSET_MM), float(_INSET_MM)
    right, bottom = _far(page.width_mm), _far(page.height_mm)
    middle, half_way = float(round(page.width_mm / 2)), float(round(page.height_mm / 2))
    corners = [(left, top), (right, top), (left, bottom), (right, bottom)]
    between = [(middle, top), (left, half_way), (right, half_way), (middle, bottom)]
    places = corners if page.width_mm < _WIDE_MM else corners + between
    return tuple(Cross(name, Point(*at)) for name, at in zip("ABCDEFGH", places, strict=False))


def cross_lines(cross: Cross) -> Iterator[Rect]:
    """Give the lines of a cross and the ticks of its two rulers, as thin rectangles."""
    x_mm, y_mm = cross.place.x_mm, cross.place.y_mm
    yield _level(x_mm - ARM_MM, x_mm + ARM_MM, y_mm)
    yield _upright(x_mm, y_mm - ARM_MM, y_mm + ARM_MM)
    for step in range(-ARM_MM, ARM_MM + 1):
        if step:
            half_mm = (_TICK_MM if step % 5 else _FIFTH_TICK_MM) / 2
            yield _upright(x_mm + step, y_mm - half_mm, y_mm + half_mm)
            yield _level(x_mm - half_mm, x_mm + half_mm, y_mm + step)


def bar_length_mm(page: Size) -> float:
    """Give how long the check bar of a page is, between the middles of its end lines."""
    return _BAR_MM if page.width_mm >= _WIDE_FOR_BAR_MM else _SHORT_BAR_MM


def bar_lines(page: Size, y_mm: float) -> Iterator[Rect]:
    """Give the lines of the check bar, in the middle of the page's width at a height."""
    half_mm, middle_mm = bar_length_mm(page) / 2, page.width_mm / 2
    yield _level(middle_mm - half_mm, middle_mm + half_mm, y_mm)
    for x_mm in (middle_mm - half_mm, middle_mm + half_mm):
        yield _upright(x_mm, y_mm - _FIFTH_TICK_MM, y_mm + _FIFTH_TICK_MM)


def _far(side_mm: float) -> float:
    """Give the last whole millimetre that stays the inset away from the far edge."""
    return float(math.floor(side_mm - _INSET_MM))


def _level(from_mm: float, to_mm: float, y_mm: float) -> Rect:
    return Rect(from_mm, y_mm - LINE_MM / 2, to_mm - from_mm, LINE_MM)


def _upright(x_mm: float, from_mm: float, to_mm: float) -> Rect:
    return Rect(x_mm - LINE_MM / 2, from_mm, LINE_MM, to_mm - from_mm)
