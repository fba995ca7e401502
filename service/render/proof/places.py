"""Words and sums about places, shared by the parts of the proof."""

from __future__ import annotations

from service.geometry import Insets, Rect


def at(rect: Rect) -> str:
    """Say where a rectangle lies, for a person with a ruler in the hand."""
    return (
        f"at {rect.x_mm:.1f} mm from the left and {rect.y_mm:.1f} mm from the top"
        f" ({rect.width_mm:.1f} x {rect.height_mm:.1f} mm)"
    )


def around(rect: Rect, *, x_mm: float, y_mm: float) -> Rect:
    """Give the rectangle grown on each side, or shrunk by negative lengths."""
    return rect.inset(Insets(-y_mm, -x_mm, -y_mm, -x_mm))
