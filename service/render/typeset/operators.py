"""Runs of glyphs as text operators (ISO 32000-1, 9.3 and 9.4).

Glyphs are written by their own numbers as two-byte codes. Where the shaper sets a glyph elsewhere
than the font's own advance leads, a shift stands before it; what rounding leaves of a shift is kept
for the next one, so that a long line does not drift.
"""

from __future__ import annotations

from collections.abc import Iterable

from service.render.pango import UNITS_PER_PIXEL
from service.render.typeset.faces import Face
from service.render.typeset.shaped import EMPTY_GLYPH, Run
from service.units import css_pixels_from_points, mm_from_css_pixels, points_from_mm

_UNITS_PER_EM = 1000
_LEAST_SHIFT = 0.5
"""Shifts are whole thousandths of the em; less than half of one waits for the next glyph."""


def show_runs(runs: Iterable[tuple[Face, Run]], size_pt: float) -> str:
    """Give the operators that show runs of glyphs from left to right, in points."""
    writer = _Writer(size_pt)
    for face, run in runs:
        writer.show(face, run)
    return writer.finished()


def say_instead(operators: str, text: str) -> str:
    """Wrap operators so that a reader takes `text` for what they show."""
    said = text.encode("utf-16-be").hex().upper()
    return f"/Span <</ActualText<FEFF{said}>>> BDC {operators} EMC"


class _Writer:
    """Writes glyphs one after another.

    `_lead` is how far the operators written so far lead beyond where the shaper stands, in
    thousandths of the em. `_array` holds codes in hexadecimal digits, and ">shift<" between them.
    """

    def __init__(self, size_pt: float) -> None:
        self._size = f"{round(size_pt, 3):g}"
        self._scale = _UNITS_PER_EM / (css_pixels_from_points(size_pt) * UNITS_PER_PIXEL)
        self._lead = 0.0
        self._face: Face | None = None
        self._array: list[str] = []
        self._parts: list[str] = []

    def show(self, face: Face, run: Run) -> None:
        """Write a run."""
        if face is not self._face:
            self._face = face
            self._write(f"/F{face.number} {self._size} Tf")
        if any(run.y_offsets):
            self._show_risen(face, run)
        else:
            self._show_level(face, run.numbers, run.widths, run.x_offsets)

    def finished(self) -> str:
        """Give what was written."""
        self._close()
        return " ".join(self._parts)

    def _show_risen(self, face: Face, run: Run) -> None:
        """Write a run with marks set higher or lower, glyph by glyph."""
        risen = 0
        rows = zip(run.numbers, run.widths, run.x_offsets, run.y_offsets, strict=True)
        for number, width, x_offset, y_offset in rows:
            if y_offset != risen:
                self._rise(y_offset)
                risen = y_offset
            self._show_level(face, (number,), (width,), (x_offset,))
        if risen:
            self._rise(0)

    def _rise(self, y_offset: int) -> None:
        rise_pt = points_from_mm(mm_from_css_pixels(-y_offset / UNITS_PER_PIXEL))
        self._write(f"{rise_pt:.3f} Ts" if y_offset else "0 Ts")

    def _show_level(
        self, face: Face, numbers: Iterable[int], widths: Iterable[int], x_offsets: Iterable[int]
    ) -> None:
        codes, scale, append = face.codes, self._scale, self._array.append
        lead = self._lead
        for number, width, x_offset in zip(numbers, widths, x_offsets, strict=True):
            if number != EMPTY_GLYPH:
                gap = lead - x_offset * scale if x_offset else lead
                advance, code = codes[number]
                if not -_LEAST_SHIFT <= gap <= _LEAST_SHIFT:
                    shift = round(gap)
                    append(f">{shift}<")
                    lead -= shift
                append(code)
                lead += advance
            lead -= width * scale
        self._lead = lead

    def _write(self, operator: str) -> None:
        self._close()
        self._parts.append(operator)

    def _close(self) -> None:
        """End the array of glyphs that is open, if any.

        An empty string must never stand before a shift: PDFium then loses the shift.
        """
        if self._array:
            shown = "".join(self._array)
            self._parts.append(f"[{shown[1:]}>] TJ" if shown[0] == ">" else f"[<{shown}>] TJ")
            self._array.clear()
