"""Words and sums about places, shared by the parts of the proof."""

from __future__ import annotations

from collections.abc import Sequence

from service.geometry import Insets, Rect


def at(rect: Rect) -> str:
    """Say where a rectangle lies, for a person with a ruler in the hand."""
    return (
        f"at {rect.x_mm:.1f} mm from the left and {rect.y_mm:.1f} mm from the top"
        f" ({rect.width_mm:.1f} x {rect.height_mm:.1f} mm)"
    )


def at_point(x_mm: float, y_mm: float) -> str:
    """Say where a point lies."""
    return f"at {x_mm:.1f} mm from the left and {y_mm:.1f} mm from the top"


def around(rect: Rect, *, x_mm: float, y_mm: float) -> Rect:
    """Give the rectangle grown on each side, or shrunk by negative lengths."""
    return rect.inset(Insets(-y_mm, -x_mm, -y_mm, -x_mm))


def bounds_of(rects: Sequence[Rect]) -> Rect | None:
    """Give what holds all rectangles, None where there are none."""
    if not rects:
        return None
    left_mm, top_mm = min(one.x_mm for one in rects), min(one.y_mm for one in rects)
    right_mm, bottom_mm = max(one.right_mm for one in rects), max(one.bottom_mm for one in rects)
    return Rect(left_mm, top_mm, right_mm - left_mm, bottom_mm - top_mm)
