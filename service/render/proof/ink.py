"""Ink is where it should be: every sign visible, every picture and mark there, no edge crossed.

Seen on one coarse raster of the face. Photos and marks stand on it as plain squares of one tone
(`standin`), so whatever is printed over or under them shows.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import repeat
from math import ceil, floor

from service.geometry import Rect
from service.render.proof.places import around, at
from service.render.proof.text.fonts import PlateFonts
from service.render.proof.text.lines import InkedLine, Line
from service.render.raster import Dots

_DOTS_PER_EM = 6
"""Coarse on purpose: it only has to tell ink from paper."""
_LEAST_DOTS_PER_MM = 1.5
_BITS = 8
_LEAST_STEP = 32
"""Tones are told apart in eight steps of this height, so what is as pale as paper is not seen."""
_SEEN = bytes(_LEAST_STEP) + b"\1" * (256 - _LEAST_STEP)
"""Whether two tones, of which this is the exclusive or, are of different steps."""
_TONE_SLACK = 2
_PAPER = b"\xff"
_MOST_ROWS = 16
_FLAT_DOTS = 4
_ROUNDING_MM = 0.05
_LOOK_DOTS = 0.75
"""How far around a sign its sides are looked for: PDFium sets small type to whole dots."""


class FaceInk:
    """The raster of one face, and what can be seen on it."""

    def __init__(self, dots: Dots, *, dots_per_mm: float) -> None:
        """Take a raster of the whole face."""
        self._dots = dots
        self._scale = dots_per_mm
        self._width, self._height = dots.image.size

    def is_plain(self, rect: Rect, tone: int) -> bool:
        """Tell whether a rectangle has one tone all over, but for the dots along its sides."""
        scale = self._scale
        left, top = ceil(rect.x_mm * scale) + 1, ceil(rect.y_mm * scale) + 1
        right = max(left + 1, floor(rect.right_mm * scale) - 1)
        bottom = max(top + 1, floor(rect.bottom_mm * scale) - 1)
        tones = self._dots.image.crop((left, top, right, bottom)).getextrema()
        return all(abs(float(str(found)) - tone) <= _TONE_SLACK for found in tones)

    def hidden_signs(self, line: InkedLine) -> int:
        """Count the signs of a line at whose place no tone changes.

        Changes from left to right are looked for first: a panel over a line has only two of them.
        Of a line that leaves the face none is seen.
        """
        ink, scale = line.ink, self._scale
        lefts, rights = line.run.lefts_mm, line.run.rights_mm
        if ink is None:
            return 0
        left, right = floor(ink.x_mm * scale) - 2, ceil(ink.right_mm * scale) + 2
        top, bottom = floor(ink.y_mm * scale), ceil(ink.bottom_mm * scale)
        if left < 0 or right > self._width or top < 0 or bottom > self._height:
            return len(lefts)
        shift = line.x_mm * scale - left
        starts = [int(one * scale + shift - _LOOK_DOTS) for one in lefts]
        # A sign ends where the paper behind it begins: one dot on.
        ends = [int(one * scale + shift + _LOOK_DOTS) + 2 for one in rights]
        changes = self._changes(left, top, right, bottom)
        found = list(map(changes.find, repeat(b"\1"), starts, ends))
        if -1 not in found:
            return 0
        # Of tall type the rows along its ends are left out, where a panel may begin or end; flat
        # signs, such as dots, are looked at with the paper around them.
        inset = min(1, (bottom - top) // _FLAT_DOTS - 1)
        return sum(
            place < 0 and not self._varies((left + start, top + inset, left + end, bottom - inset))
            for place, start, end in zip(found, starts, ends, strict=True)
        )

    def _varies(self, box: tuple[int, int, int, int]) -> bool:
        """Tell whether dots differ within a box, for strokes as far apart as dots look alike."""
        tones = self._dots.image.crop(box).getextrema()
        darkest, lightest = (int(str(tone)) for tone in tones)
        return lightest - darkest >= _LEAST_STEP

    def _changes(self, left: int, top: int, right: int, bottom: int) -> bytes:
        """Give for each column whether in any row its tone is another than that to its left.

        A whole row is one number, so that a few operations compare all its dots at once. The first
        column has nothing to its left and says nothing.
        """
        memory, row_bytes, different = self._dots.memory, self._dots.row_bytes, 0
        # Of large type not every row is needed: its smallest sign is a full stop.
        step = row_bytes * max(1, (bottom - top) // _MOST_ROWS)
        for start in range(top * row_bytes, bottom * row_bytes, step):
            row = int.from_bytes(memory[start + left : start + right], "big")
            different |= row ^ (row >> _BITS)
        changes = different.to_bytes(right - left, "big").translate(_SEEN)
        return b"\0" + changes[1:]


def scale_for(lines: Sequence[Line]) -> float:
    """Give the dots to the mm that show the smallest type of a face."""
    smallest_mm = min((line.em_mm for line in lines), default=1.0)
    return max(_LEAST_DOTS_PER_MM, _DOTS_PER_EM / smallest_mm)


def hidden_faults(inked: Sequence[InkedLine], ink: FaceInk, fonts: PlateFonts) -> Iterator[str]:
    """Say where signs are that nobody can see: clipped, covered, or in paper colour."""
    for line in inked:
        hidden = ink.hidden_signs(line)
        if hidden:
            text, place = line.spelled(fonts.texts), line.ink
            yield (
                f"{text[:60]!r} is in the file but {hidden} of its signs are not to be seen,"
                f" {at(place or Rect(line.x_mm, line.y_mm, 0.0, 0.0))}"
            )


def edge_faults(whole: Rect, extents: Iterable[Rect], *, clear_mm: float) -> Iterator[str]:
    """Say what reaches out of the page or into the strip of `clear_mm` along its edges.

    Places are exact, but paper colour counts as ink.
    """
    inner = around(whole, x_mm=-clear_mm, y_mm=-clear_mm)
    for extent in extents:
        if not whole.holds(extent, tolerance_mm=_ROUNDING_MM):
            yield f"something reaches out of the page, {at(extent)}"
        elif not inner.holds(extent, tolerance_mm=_ROUNDING_MM):
            yield f"ink stands within {clear_mm:g} mm of the edge: it lies {at(extent)}"
