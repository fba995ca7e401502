"""The glyphs a page shows, read from its content stream.

Fonts are embedded with their original glyph numbers as two-byte codes, so what is drawn can be
compared with what a shaper gives, whatever the text extracted from the file would be.
The text operators are those of ISO 32000-1, 9.3 and 9.4.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import pikepdf
from pikepdf import Dictionary, Name

from service.geometry import Point
from service.render.compose.matrix import IDENTITY, Matrix, matrix_of, moved, times
from service.render.reading.fonts import FontInFile, fonts_of
from service.units import mm_from_points

_OPERATORS = "q Q cm BT Tm Td TD T* TL Tf Ts Tc Tz Tj TJ Do"
_UNITS_PER_EM = 1000.0
_DEFAULT_WIDTH = 1000.0
_PERCENT = 100.0


@dataclass(frozen=True, slots=True)
class Glyph:
    """One glyph as it is shown: `font` without the prefix of its subset, size of the em in mm."""

    font: str
    number: int
    origin: Point
    size_mm: float


@dataclass(frozen=True, slots=True)
class _State:
    """What `q` saves and `Q` brings back, as far as text needs it; points are the text's own."""

    matrix: Matrix = IDENTITY
    font: str = ""
    size_pt: float = 0.0
    rise_pt: float = 0.0
    spacing_pt: float = 0.0
    stretch_ratio: float = 1.0
    leading_pt: float = 0.0


def read_glyphs(page: pikepdf.Page) -> tuple[Glyph, ...]:
    """Give every glyph of a page in the order of drawing, those of drawn forms included."""
    height_mm = mm_from_points(float(page.mediabox[3]) - float(page.mediabox[1]))
    return tuple(_ContentReader(page.obj, height_mm=height_mm, start=_State()).glyphs())


class _ContentReader:
    """Follows the text operators of one page or form."""

    def __init__(self, holder: pikepdf.Object, *, height_mm: float, start: _State) -> None:
        self._holder = holder
        self._height_mm = height_mm
        self._state = start
        self._saved: list[_State] = []
        self._line = IDENTITY
        # How far the pen has gone along the line since it began.
        self._along = 0.0
        self._fonts = fonts_of(holder.get(Name.Resources))

    def glyphs(self) -> Iterator[Glyph]:
        for instruction in pikepdf.parse_content_stream(self._holder, _OPERATORS):
            operands, operator = list(instruction.operands), str(instruction.operator)
            if operator == "Tj":
                yield from self._show(operands)
            elif operator == "TJ":
                yield from self._show(list(operands[0].as_list()))
            elif operator == "Do":
                yield from self._draw_form(Name(str(operands[0])))
            elif operator in {"q", "Q"}:
                self._keep(operator)
            elif operator == "Tf":
                self._state = replace(
                    self._state, font=str(operands[0]), size_pt=_number(operands[1])
                )
            else:
                self._move(operator, [_number(operand) for operand in operands])

    def _keep(self, operator: str) -> None:
        if operator == "q":
            self._saved.append(self._state)
        elif self._saved:
            self._state = self._saved.pop()

    def _move(self, operator: str, values: list[float]) -> None:
        match operator, values:
            case "cm", [a, b, c, d, e, f]:
                changed = times((a, b, c, d, e, f), self._state.matrix)
                self._state = replace(self._state, matrix=changed)
            case "Tm", [a, b, c, d, e, f]:
                self._begin_line((a, b, c, d, e, f))
            case "BT", []:
                self._begin_line(IDENTITY)
            case (("Td" | "TD"), [x, y]):
                if operator == "TD":
                    self._state = replace(self._state, leading_pt=-y)
                self._begin_line(moved(self._line, x, y))
            case "T*", []:
                self._begin_line(moved(self._line, 0.0, -self._state.leading_pt))
            case _, [value]:
                self._state = _with_setting(self._state, operator, value)

    def _begin_line(self, matrix: Matrix) -> None:
        self._line, self._along = matrix, 0.0

    def _show(self, parts: Sequence[object]) -> Iterator[Glyph]:
        state = self._state
        font = self._fonts.get(state.font)
        space = times(self._line, state.matrix)
        for part in parts:
            if isinstance(part, pikepdf.String):
                codes = bytes(part)
                for high, low in zip(codes[::2], codes[1::2], strict=False):
                    yield self._glyph(font, (high << 8) + low, space)
            else:
                self._advance(-_number(part) / _UNITS_PER_EM * state.size_pt)

    def _glyph(self, font: FontInFile | None, code: int, space: Matrix) -> Glyph:
        state = self._state
        number = code if font is None else font.glyph(code)
        a, b, c, d, e, f = space
        x_pt = a * self._along + c * state.rise_pt + e
        y_pt = b * self._along + d * state.rise_pt + f
        width = _DEFAULT_WIDTH if font is None else font.widths.get(number, _DEFAULT_WIDTH)
        self._advance(width / _UNITS_PER_EM * state.size_pt + state.spacing_pt)
        origin = Point(mm_from_points(x_pt), self._height_mm - mm_from_points(y_pt))
        size_mm = mm_from_points(state.size_pt * math.sqrt(abs(a * d - b * c)))
        return Glyph(font.name if font else state.font, number, origin, size_mm)

    def _advance(self, length: float) -> None:
        self._along += length * self._state.stretch_ratio

    def _draw_form(self, name: Name) -> Iterator[Glyph]:
        forms = self._holder.get(Name.Resources, Dictionary()).get(Name.XObject, Dictionary())
        drawn = forms.get(name)
        if drawn is None or drawn.get(Name.Subtype) != Name.Form:
            return
        own = drawn.get(Name.Matrix)
        inner = IDENTITY if own is None else matrix_of(own.as_list())
        start = replace(self._state, matrix=times(inner, self._state.matrix))
        yield from _ContentReader(drawn, height_mm=self._height_mm, start=start).glyphs()


def _with_setting(state: _State, operator: str, value: float) -> _State:
    match operator:
        case "Ts":
            return replace(state, rise_pt=value)
        case "Tc":
            return replace(state, spacing_pt=value)
        case "Tz":
            return replace(state, stretch_ratio=value / _PERCENT)
    return replace(state, leading_pt=value)


def _number(operand: object) -> float:
    return float(str(operand))
