"""The glyphs a page shows, read from its content stream.

Fonts are embedded with their original glyph numbers as two-byte codes, so what is drawn can be
compared with what a shaper gives, whatever the text extracted from the file would be.
The text operators are those of ISO 32000-1, 9.3 and 9.4.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import islice

import pikepdf
from pikepdf import Name

from service.geometry import Point
from service.render.matrix import IDENTITY, Matrix, moved, times
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


class FontInFile:
    """A composite font of the file: its name, whether it is embedded, and its widths."""

    def __init__(self, entry: pikepdf.Object) -> None:
        """Wrap the entry of a resource dictionary."""
        self._entry = entry

    @cached_property
    def name(self) -> str:
        """The name without the prefix of its subset."""
        return str(self._entry.get(Name.BaseFont, "/unnamed")).lstrip("/").rpartition("+")[2]

    @property
    def is_by_glyph(self) -> bool:
        """Whether its codes are glyph numbers of two bytes."""
        identity = Name("/Identity")
        return bool(
            self._entry.get(Name.Encoding) == Name("/Identity-H")
            and self._descendant is not None
            and self._descendant.get(Name.CIDToGIDMap, identity) == identity
        )

    @property
    def is_embedded(self) -> bool:
        """Whether the outlines travel with the file."""
        font = self._entry if self._descendant is None else self._descendant
        described = font.get(Name.FontDescriptor)
        return described is not None and any(
            key in described for key in (Name.FontFile2, Name.FontFile3)
        )

    @cached_property
    def widths(self) -> dict[int, float]:
        """Advance widths by glyph, in thousandths of the em; those left out are 1000."""
        found: dict[int, float] = {}
        if self._descendant is None or Name.W not in self._descendant:
            return found
        entries = iter(self._descendant.W.as_list())
        for first in entries:
            second = next(entries)
            if isinstance(second, pikepdf.Array):
                found |= {int(first) + step: float(width) for step, width in enumerate(second)}
            else:
                width = float(next(entries))
                found |= dict.fromkeys(range(int(first), int(second) + 1), width)
        return found

    @cached_property
    def _descendant(self) -> pikepdf.Object | None:
        descendants = self._entry.get(Name.DescendantFonts)
        return None if descendants is None else descendants[0]


def fonts_of(resources: pikepdf.Object | None) -> dict[str, FontInFile]:
    """Give the fonts of a resource dictionary by the names the content uses."""
    if resources is None or Name.Font not in resources:
        return {}
    return {name: FontInFile(entry) for name, entry in resources.Font.as_dict().items()}


@dataclass(frozen=True, slots=True)
class _State:
    """What `q` saves and `Q` brings back, as far as text needs it."""

    matrix: Matrix = IDENTITY
    font: str = ""
    size: float = 0.0
    rise: float = 0.0
    spacing: float = 0.0
    stretch: float = 1.0
    leading: float = 0.0


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
        self._line = self._text = IDENTITY
        self._fonts = fonts_of(holder.get(Name.Resources))

    def glyphs(self) -> Iterator[Glyph]:
        for instruction in pikepdf.parse_content_stream(self._holder, _OPERATORS):
            operands, operator = list(instruction.operands), str(instruction.operator)
            if operator == "Tj":
                yield from self._show(operands)
            elif operator == "TJ":
                yield from self._show(list(operands[0]))
            elif operator == "Do":
                yield from self._draw_form(str(operands[0]))
            elif operator in {"q", "Q"}:
                self._keep(operator)
            elif operator == "Tf":
                self._state = replace(self._state, font=str(operands[0]), size=float(operands[1]))
            else:
                self._move(operator, [float(operand) for operand in operands])

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
                    self._state = replace(self._state, leading=-y)
                self._begin_line(moved(self._line, x, y))
            case "T*", []:
                self._begin_line(moved(self._line, 0.0, -self._state.leading))
            case _, [value]:
                self._set(operator, value)

    def _set(self, operator: str, value: float) -> None:
        match operator:
            case "Ts":
                self._state = replace(self._state, rise=value)
            case "Tc":
                self._state = replace(self._state, spacing=value)
            case "Tz":
                self._state = replace(self._state, stretch=value / _PERCENT)
            case _:
                self._state = replace(self._state, leading=value)

    def _begin_line(self, matrix: Matrix) -> None:
        self._line = self._text = matrix

    def _show(self, parts: list[object]) -> Iterator[Glyph]:
        font = self._fonts.get(self._state.font)
        for part in parts:
            if isinstance(part, pikepdf.String):
                codes = bytes(part)
                for pair in zip(islice(codes, 0, None, 2), islice(codes, 1, None, 2), strict=False):
                    yield self._glyph(font, (pair[0] << 8) + pair[1])
            else:
                self._advance(-float(str(part)) / _UNITS_PER_EM * self._state.size)

    def _glyph(self, font: FontInFile | None, number: int) -> Glyph:
        state = self._state
        a, b, c, d, x, y = times(moved(self._text, 0.0, state.rise), state.matrix)
        width = _DEFAULT_WIDTH if font is None else font.widths.get(number, _DEFAULT_WIDTH)
        self._advance(width / _UNITS_PER_EM * state.size + state.spacing)
        origin = Point(mm_from_points(x), self._height_mm - mm_from_points(y))
        size_mm = mm_from_points(state.size * abs(a * d - b * c) ** 0.5)
        return Glyph(font.name if font else state.font, number, origin, size_mm)

    def _advance(self, length: float) -> None:
        self._text = moved(self._text, length * self._state.stretch, 0.0)

    def _draw_form(self, name: str) -> Iterator[Glyph]:
        resources = self._holder.get(Name.Resources)
        drawn = None if resources is None else resources.get(Name.XObject, {}).get(name)
        if drawn is None or drawn.get(Name.Subtype) != Name.Form:
            return
        own = drawn.get(Name.Matrix)
        inner = IDENTITY if own is None else _matrix(own)
        start = replace(self._state, matrix=times(inner, self._state.matrix))
        yield from _ContentReader(drawn, height_mm=self._height_mm, start=start).glyphs()


def _matrix(array: pikepdf.Object) -> Matrix:
    a, b, c, d, e, f = (float(value) for value in array.as_list())
    return (a, b, c, d, e, f)
