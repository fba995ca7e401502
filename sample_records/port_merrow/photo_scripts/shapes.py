"""Outlines and curves that several objects share."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from shapely.geometry import Point, Polygon

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from numpy.typing import NDArray

    Array = NDArray[np.float64]


def disc(radius: float, x: float = 0.0, y: float = 0.0) -> Polygon:
    """Return a round outline."""
    return Point(x, y).buffer(radius, quad_segs=48)


def curve(points: Sequence[Sequence[float]], count: int = 200) -> Array:
    """Return a smooth path through the points (Catmull-Rom)."""
    p = np.array(points, dtype=float)
    p = np.concatenate([2 * p[:1] - p[1:2], p, 2 * p[-1:] - p[-2:-1]])
    places = np.linspace(0, len(p) - 3 - 1e-9, count)
    i, t = places.astype(int), (places % 1)[:, None]
    a, b, c, d = p[i], p[i + 1], p[i + 2], p[i + 3]
    return 0.5 * (
        2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t**2 + (3 * b - a - 3 * c + d) * t**3
    )


def helix(radius: float, turns: float, rise: float, count: int = 900) -> Array:
    """Return a coil around the z axis that rises in all by `rise`."""
    t = np.linspace(0, 1, count)
    angle = 2 * np.pi * turns * t
    return np.column_stack([radius * np.cos(angle), radius * np.sin(angle), rise * t])


def bent(start: float, stop: float, radius: Callable[[Array], Array], count: int = 160) -> Array:
    """Return a path in the plane given in polar form, angles in degrees."""
    angle = np.radians(np.linspace(start, stop, count))
    r = radius(angle)
    return np.column_stack([r * np.cos(angle), r * np.sin(angle), np.zeros(count)])


def ball(radius: float) -> list[tuple[float, float]]:
    """Return the profile of a sphere around the origin, to be turned."""
    angles = np.linspace(-np.pi / 2, np.pi / 2, 40)
    return [(float(abs(radius * np.cos(a))), float(radius * np.sin(a))) for a in angles]
