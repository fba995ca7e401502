"""Operators of a content stream for everything on a face but its text (ISO 32000-1, 8).

Lengths are points, origin bottom left, unless their names say otherwise. What is drawn matches what
the layout engine makes of the same CSS: outlines stand outside a picture, borders inside their
rectangle, and dashes begin and end at the corners.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from service.geometry import Rect, Size
from service.render.frames.frame import Colour
from service.symbols.symbol import Symbol
from service.units import points_from_mm

_ROUND = 0.5522847498
"""Where the handles of a curve stand that follows a quarter of a circle, in radii."""
_DIGITS = bytes.maketrans(b"\0\1", b"01")


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle in points: left and bottom, width and height."""

    x_pt: float
    y_pt: float
    width_pt: float
    height_pt: float

    @property
    def right_pt(self) -> float:
        """The right side."""
        return self.x_pt + self.width_pt

    @property
    def top_pt(self) -> float:
        """The upper side."""
        return self.y_pt + self.height_pt

    def grown(self, by: float) -> Box:
        """Give the rectangle moved outwards on each side."""
        return Box(self.x_pt - by, self.y_pt - by, self.width_pt + 2 * by, self.height_pt + 2 * by)

    @property
    def path(self) -> str:
        """The rectangle as a path."""
        return f"{self.x_pt:.3f} {self.y_pt:.3f} {self.width_pt:.3f} {self.height_pt:.3f} re"

    @property
    def unit(self) -> str:
        """The operator that takes the unit square to this rectangle."""
        return f"{self.width_pt:.3f} 0 0 {self.height_pt:.3f} {self.x_pt:.3f} {self.y_pt:.3f} cm"


def box_of(rect: Rect, face: Size) -> Box:
    """Bring a rectangle of a face into points."""
    return Box(
        points_from_mm(rect.x_mm),
        points_from_mm(face.height_mm - rect.bottom_mm),
        points_from_mm(rect.width_mm),
        points_from_mm(rect.height_mm),
    )


@cache
def fill_colour(colour: Colour) -> str:
    """Set the colour that fills; there are as many as the templates name."""
    return f"{_written(colour)} rg"


@cache
def line_colour(colour: Colour) -> str:
    """Set the colour that strokes."""
    return f"{_written(colour)} RG"


def _written(colour: Colour) -> str:
    return " ".join(f"{part:.4g}" for part in colour)


def filled(box: Box, radius: float) -> str:
    """Fill a rectangle, its corners rounded."""
    return f"{_outline(box, radius)} f"


def stroked(box: Box, width: float, radius: float) -> str:
    """Draw a line of this width along the inside of a rectangle."""
    inner = box.grown(-width / 2)
    return f"{width:.3f} w {_outline(inner, max(0.0, radius - width / 2))} s"


def dashed(box: Box, width: float) -> str:
    """Draw four lines of dashes inside a rectangle, a dash at each corner.

    Dashes and gaps are about three times as long as the line is wide, and alike on each side.
    """
    left, bottom, right, top = box.x_pt, box.y_pt, box.right_pt, box.top_pt
    inner = box.grown(-width / 2)
    across, down = _dashes(box.width_pt, width), _dashes(box.height_pt, width)
    level = " ".join(
        f"{left:.3f} {y:.3f} m {right:.3f} {y:.3f} l" for y in (inner.top_pt, inner.y_pt)
    )
    upright = " ".join(
        f"{x:.3f} {top:.3f} m {x:.3f} {bottom:.3f} l" for x in (inner.x_pt, inner.right_pt)
    )
    return f"{width:.3f} w {across} {level} S {down} {upright} S [] 0 d"


def _dashes(length: float, width: float) -> str:
    count = int(length // (6 * width)) + 1
    return f"[{length / (2 * count - 1):.4f}] 0 d"


def symbol_mask(symbol: Symbol, box: Box) -> str:
    """Draw the dark modules of a symbol into a square, without a clear margin.

    A mask of one bit a module is painted dot by dot where its centre falls, while a filled path may
    spread by a dot on each side. It is written in hexadecimal digits, so that no reader takes a
    chance bit pattern for the end of the picture.
    """
    side = symbol.side_modules
    # Each row ends at a whole byte.
    unused = bytes(-side % 8)
    bits = b"".join(row + unused for row in symbol.modules).translate(_DIGITS)
    rows = f"{int(bits, 2):0{len(bits) // 4}x}"
    return f"q {box.unit} BI /W {side} /H {side} /IM true /BPC 1 /D [1 0] /F /AHx ID {rows}> EI Q"


def _outline(box: Box, radius: float) -> str:
    """Give the path of a rectangle whose corners are quarters of a circle."""
    r = min(radius, box.width_pt / 2, box.height_pt / 2)
    if r <= 0:
        return box.path
    left, bottom, right, top = box.x_pt, box.y_pt, box.right_pt, box.top_pt
    k = r * (1 - _ROUND)
    points = (
        (left + r, bottom, "m"),
        (right - r, bottom, "l"),
        (right - k, bottom, "", right, bottom + k, "", right, bottom + r, "c"),
        (right, top - r, "l"),
        (right, top - k, "", right - k, top, "", right - r, top, "c"),
        (left + r, top, "l"),
        (left + k, top, "", left, top - k, "", left, top - r, "c"),
        (left, bottom + r, "l"),
        (left, bottom + k, "", left + k, bottom, "", left + r, bottom, "c"),
    )
    written = (
        value if isinstance(value, str) else f"{value:.3f}" for step in points for value in step
    )
    return " ".join(filter(None, written)) + " h"
