"""The glyphs a page shows and where each stands, read from its content stream.

Follows the text operators that the layout engine and our own plates use (ISO 32000-1, 9.3 and 9.4),
through every matrix around them. One that is not followed shifts what comes after it, which the
comparison then finds.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

import pikepdf
from pikepdf import Dictionary, Name

from service.geometry import Point
from service.render.matrix import IDENTITY, Matrix, matrix_of, moved, times
from service.render.reading.fonts import FontInFile, fonts_of
from service.render.reading.glyphs import Glyph
from service.units import mm_from_points

_OPERATORS = "q Q cm BT Tm Td Tf Ts Tj TJ Do"
_UNITS_PER_EM = 1000.0


@dataclass(frozen=True, slots=True)
class _State:
    """What `q` saves and `Q` brings back, as far as text needs it; points are the text's own."""

    matrix: Matrix = IDENTITY
    font: FontInFile | None = None
    size_pt: float = 0.0
    rise_pt: float = 0.0


def page_glyphs(page: pikepdf.Page) -> tuple[Glyph, ...]:
    """Give every glyph of a page in the order of drawing, those of drawn forms included."""
    height_mm = mm_from_points(float(page.mediabox[3]) - float(page.mediabox[1]))
    return tuple(_Follower(page.obj, height_mm=height_mm, start=_State()).glyphs())


class _Follower:
    """Follows the text operators of one page or form."""

    def __init__(self, holder: pikepdf.Object, *, height_mm: float, start: _State) -> None:
        self._holder = holder
        self._height_mm = height_mm
        self._state = start
        self._saved: list[_State] = []
        self._line = IDENTITY
        self._along_pt = 0.0
        self._fonts = fonts_of(holder.get(Name.Resources))

    def glyphs(self) -> Iterator[Glyph]:
        for instruction in pikepdf.parse_content_stream(self._holder, _OPERATORS):
            operands, operator = list(instruction.operands), str(instruction.operator)
            if operator in {"Tj", "TJ"}:
                yield from self._show(operands[0])
            elif operator == "Do":
                yield from self._form(Name(str(operands[0])))
            elif operator in _STEPS:
                _STEPS[operator](self, operands)

    def save(self, _operands: Sequence[object]) -> None:
        self._saved.append(self._state)

    def restore(self, _operands: Sequence[object]) -> None:
        if self._saved:
            self._state = self._saved.pop()

    def bend(self, operands: Sequence[object]) -> None:
        self._state = replace(self._state, matrix=times(matrix_of(operands), self._state.matrix))

    def begin(self, operands: Sequence[object]) -> None:
        self._line = matrix_of(operands) if operands else IDENTITY
        self._along_pt = 0.0

    def go(self, operands: Sequence[object]) -> None:
        x, y = map(_number, operands)
        self._line = moved(self._line, x, y)
        self._along_pt = 0.0

    def take_font(self, operands: Sequence[object]) -> None:
        font, size_pt = self._fonts.get(str(operands[0])), _number(operands[1])
        self._state = replace(self._state, font=font, size_pt=size_pt)

    def rise(self, operands: Sequence[object]) -> None:
        self._state = replace(self._state, rise_pt=_number(operands[0]))

    def _show(self, shown: object) -> Iterator[Glyph]:
        state, font = self._state, self._state.font
        if font is None:
            return
        space = times(self._line, state.matrix)
        scale_ratio = math.sqrt(abs(space[0] * space[3] - space[1] * space[2]))
        size_mm = mm_from_points(state.size_pt * scale_ratio)
        for part in shown.as_list() if isinstance(shown, pikepdf.Array) else [shown]:
            if not isinstance(part, pikepdf.String):
                self._along_pt -= _number(part) / _UNITS_PER_EM * state.size_pt
                continue
            codes = bytes(part)
            for high, low in zip(codes[::2], codes[1::2], strict=False):
                number = font.glyph((high << 8) + low)
                yield Glyph(font.name, number, self._place(space), size_mm)
                width = font.widths.get(number, _UNITS_PER_EM)
                self._along_pt += width / _UNITS_PER_EM * state.size_pt

    def _place(self, space: Matrix) -> Point:
        a, b, c, d, e, f = space
        x_pt = a * self._along_pt + c * self._state.rise_pt + e
        y_pt = b * self._along_pt + d * self._state.rise_pt + f
        return Point(mm_from_points(x_pt), self._height_mm - mm_from_points(y_pt))

    def _form(self, name: Name) -> Iterator[Glyph]:
        forms = self._holder.get(Name.Resources, Dictionary()).get(Name.XObject, Dictionary())
        drawn = forms.get(name)
        if drawn is None or drawn.get(Name.Subtype) != Name.Form:
            return
        own = drawn.get(Name.Matrix)
        inner = IDENTITY if own is None else matrix_of(own.as_list())
        start = replace(self._state, matrix=times(inner, self._state.matrix))
        yield from _Follower(drawn, height_mm=self._height_mm, start=start).glyphs()


_STEPS: dict[str, Callable[[_Follower, Sequence[object]], None]] = {
    "q": _Follower.save,
    "Q": _Follower.restore,
    "cm": _Follower.bend,
    "BT": _Follower.begin,
    "Tm": _Follower.begin,
    "Td": _Follower.go,
    "Tf": _Follower.take_font,
    "Ts": _Follower.rise,
}


def _number(operand: object) -> float:
    return float(str(operand))
