"""Points, sizes, rectangles and insets in mm; origin top left, y downwards."""

from __future__ import annotations

from dataclasses import dataclass

TOLERANCE_MM = 0.001
"""Two measures nearer than this are the same: a tenth of the exactness promised in print."""


@dataclass(frozen=True, slots=True)
class Point:
    """A place on a page or sheet, in mm from its top left corner."""

    x_mm: float
    y_mm: float


@dataclass(frozen=True, slots=True)
class Size:
    """A width and a height in mm."""

    width_mm: float
    height_mm: float

    @property
    def turned(self) -> Size:
        """The same size with width and height exchanged."""
        return Size(self.height_mm, self.width_mm)

    @property
    def is_landscape(self) -> bool:
        """Whether it is wider than high."""
        return self.width_mm > self.height_mm

    def holds(self, other: Size) -> bool:
        """Tell whether `other` fits inside without turning."""
        return (
            other.width_mm <= self.width_mm + TOLERANCE_MM
            and other.height_mm <= self.height_mm + TOLERANCE_MM
        )


@dataclass(frozen=True, slots=True)
class Insets:
    """Margins in mm, in the order of CSS: top, right, bottom, left."""

    top_mm: float
    right_mm: float
    bottom_mm: float
    left_mm: float


@dataclass(frozen=True, slots=True)
class Rect:
    """A rectangle: its top left corner, width and height, in mm."""

    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float

    @property
    def right_mm(self) -> float:
        """The x of the right edge."""
        return self.x_mm + self.width_mm

    @property
    def bottom_mm(self) -> float:
        """The y of the bottom edge."""
        return self.y_mm + self.height_mm

    @property
    def size(self) -> Size:
        """Width and height alone."""
        return Size(self.width_mm, self.height_mm)

    def moved(self, dx_mm: float, dy_mm: float) -> Rect:
        """Give the same rectangle shifted right and down."""
        return Rect(self.x_mm + dx_mm, self.y_mm + dy_mm, self.width_mm, self.height_mm)

    def inset(self, by: Insets) -> Rect:
        """Give the rectangle inside the margins `by`."""
        return Rect(
            self.x_mm + by.left_mm,
            self.y_mm + by.top_mm,
            self.width_mm - by.left_mm - by.right_mm,
            self.height_mm - by.top_mm - by.bottom_mm,
        )

    def holds(self, other: Rect, *, tolerance_mm: float = TOLERANCE_MM) -> bool:
        """Tell whether `other` lies inside this rectangle."""
        return (
            other.x_mm >= self.x_mm - tolerance_mm
            and other.y_mm >= self.y_mm - tolerance_mm
            and other.right_mm <= self.right_mm + tolerance_mm
            and other.bottom_mm <= self.bottom_mm + tolerance_mm
        )

    def overlaps(self, other: Rect, *, tolerance_mm: float = TOLERANCE_MM) -> bool:
        """Tell whether the two share more than an edge."""
        return (
            self.x_mm < other.right_mm - tolerance_mm
            and other.x_mm < self.right_mm - tolerance_mm
            and self.y_mm < other.bottom_mm - tolerance_mm
            and other.y_mm < self.bottom_mm - tolerance_mm
        )
