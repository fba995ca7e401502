"""What a page of the layout engine paints, one mark of ink after another.

Read from its content stream (ISO 32000-1, 8 and 9): the colour, the box and the manner of each. Ink
that a plate could not repeat (see-through, shaded, in other colours than red, green and blue) is
told by its reason. Clipping is not followed: the pixels are compared later.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace

import pikepdf
from pikepdf import Dictionary, Name

from service.render.frames.frame import Colour
from service.render.matrix import IDENTITY, Matrix, matrix_of, times
from service.units import mm_from_points

_PLACES = 3
_BLACK: Colour = (0.0, 0.0, 0.0)
Corners = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Inked:
    """One mark of ink, in one of the manners: text, fill, hollow, pierced, stroke, picture, object.

    A hollow is a fill with a hole, as thick outlines are drawn; with more holes it is pierced.

    `corners` are left, top, right and bottom in mm of the face, without the width of a stroke;
    `width_mm` is that width. `codes` are the codes of a text. `reason` is empty, or says why a
    plate could not repeat this.
    """

    manner: str
    colour: Colour = _BLACK
    corners: Corners = (0.0, 0.0, 0.0, 0.0)
    width_mm: float = 0.0
    is_dashed: bool = False
    codes: bytes = b""
    reason: str = ""


@dataclass(frozen=True, slots=True)
class _Paint:
    """A colour, or why it is none we can repeat."""

    colour: Colour = _BLACK
    reason: str = ""


@dataclass(frozen=True, slots=True)
class _State:
    matrix: Matrix = IDENTITY
    fill: _Paint = field(default_factory=_Paint)
    line: _Paint = field(default_factory=_Paint)
    width_pt: float = 1.0
    is_dashed: bool = False
    is_cut_up: bool = False
    """Whether the clipping has several parts, which is how the engine draws thick dashes."""
    veil: str = ""
    """Why what is painted now is not opaque, or empty."""


def read_ink(page: pikepdf.Page) -> tuple[Inked, ...]:
    """Give every mark of ink of a page in the order of painting."""
    height_mm = mm_from_points(float(page.mediabox[3]) - float(page.mediabox[1]))
    return tuple(_Reader(page, height_mm).marks())


class _Reader:
    """Follows the content of one page."""

    def __init__(self, page: pikepdf.Page, height_mm: float) -> None:
        self._page = page
        self._resources = page.obj.get(Name.Resources, Dictionary())
        self._height_mm = height_mm
        self._state = _State()
        self._saved: list[_State] = []
        self._points: list[tuple[float, float]] = []
        self._parts = 0
        self._is_moved = False

    def marks(self) -> Iterator[Inked]:
        for instruction in pikepdf.parse_content_stream(self._page):
            operator = str(instruction.operator)
            operands = list(instruction.operands)
            if operator in _PAINTS:
                yield from self._paint(_PAINTS[operator])
            elif operator in {"Tj", "TJ", "'", '"'}:
                yield self._text(operands[-1])
            elif operator in {"Do", "sh", "INLINE IMAGE"}:
                yield self._object(operator, operands)
            elif operator in _FOLLOWED:
                _FOLLOWED[operator](self, operator, operands)

    def keep(self, operator: str, _operands: Sequence[object]) -> None:
        if operator == "q":
            self._saved.append(self._state)
        elif self._saved:
            self._state = self._saved.pop()

    def move(self, _operator: str, operands: Sequence[object]) -> None:
        matrix = times(matrix_of(operands), self._state.matrix)
        self._state = replace(self._state, matrix=matrix)

    def colour(self, operator: str, operands: Sequence[object]) -> None:
        paint = _paint_of(operator.lower(), operands)
        if operator.islower():
            self._state = replace(self._state, fill=paint)
        else:
            self._state = replace(self._state, line=paint)

    def pen(self, operator: str, operands: Sequence[object]) -> None:
        if operator == "w":
            self._state = replace(self._state, width_pt=_number(operands[0]))
        else:
            lengths = operands[0]
            # A dash of no length is a dot.
            is_dashed = isinstance(lengths, pikepdf.Array) and any(map(_number, lengths[:1]))
            self._state = replace(self._state, is_dashed=is_dashed)

    def veil(self, _operator: str, operands: Sequence[object]) -> None:
        states = self._resources.get(Name.ExtGState, Dictionary())
        asked = states.get(Name(str(operands[0])), Dictionary())
        see_through = any(_number(asked.get(key, 1)) < 1 for key in (Name.ca, Name.CA))
        plain = (Name.None_, Name.Normal, None)
        if see_through or any(asked.get(key) not in plain for key in (Name.SMask, Name.BM)):
            self._state = replace(self._state, veil="it is not opaque")

    def path(self, operator: str, operands: Sequence[object]) -> None:
        values = [_number(operand) for operand in operands]
        if self._is_moved and operator in {"m", "re"}:
            # The engine begins paths at their origin, and then goes elsewhere without a line.
            self._points.pop()
            self._parts -= 1
        self._is_moved = operator == "m"
        if operator in {"m", "re"}:
            self._parts += 1
        if operator == "re":
            x, y, width, height = values
            values = [x, y, x + width, y, x, y + height, x + width, y + height]
        # The engine draws curves with the corners of a box, which their handles do not leave.
        self._points += [self._place(*pair) for pair in zip(values[::2], values[1::2], strict=True)]

    def end(self, operator: str, _operands: Sequence[object]) -> None:
        if operator in {"W", "W*"}:
            is_cut_up = self._state.is_cut_up or self._parts > 1
            self._state = replace(self._state, is_cut_up=is_cut_up)
        else:
            self._points, self._parts, self._is_moved = [], 0, False

    def _place(self, x: float, y: float) -> tuple[float, float]:
        a, b, c, d, e, f = self._state.matrix
        return (
            mm_from_points(a * x + c * y + e),
            self._height_mm - mm_from_points(b * x + d * y + f),
        )

    def _paint(self, manners: str) -> Iterator[Inked]:
        state = self._state
        if "f" in manners:
            parts = self._parts if "*" in manners else 1
            manner = {1: "fill", 2: "hollow"}.get(parts, "pierced")
            mark = self._mark(manner, state.fill, self._points)
            yield replace(mark, is_dashed=state.is_cut_up)
        if "s" in manners:
            scale = abs(state.matrix[0] * state.matrix[3] - state.matrix[1] * state.matrix[2])
            width_mm = round(mm_from_points(state.width_pt * scale**0.5), _PLACES)
            mark = self._mark("stroke", state.line, self._points)
            yield replace(mark, width_mm=width_mm, is_dashed=state.is_dashed)
        self.end("", ())

    def _text(self, shown: object) -> Inked:
        parts = shown.as_list() if isinstance(shown, pikepdf.Array) else [shown]
        codes = b"".join(bytes(part) for part in parts if isinstance(part, pikepdf.String))
        return replace(self._mark("text", self._state.fill, ()), codes=codes)

    def _object(self, operator: str, operands: Sequence[object]) -> Inked:
        if operator == "Do":
            drawn = self._resources.get(Name.XObject, Dictionary()).get(Name(str(operands[0])))
            if drawn is not None and drawn.get(Name.Subtype) == Name.Image:
                corners = [self._place(x, y) for x in (0, 1) for y in (0, 1)]
                return self._mark("picture", _Paint(), corners)
        reason = "it is shaded" if operator == "sh" else "it is painted as a group"
        return Inked("object", reason=reason)

    def _mark(self, manner: str, paint: _Paint, points: Sequence[tuple[float, float]]) -> Inked:
        corners = _corners_of(points) if points else (0.0, 0.0, 0.0, 0.0)
        return Inked(manner, paint.colour, corners, reason=self._state.veil or paint.reason)


_Follow = Callable[[_Reader, str, Sequence[object]], None]
_GROUPS: tuple[tuple[str, _Follow], ...] = (
    ("q Q", _Reader.keep),
    ("cm", _Reader.move),
    ("rg RG g G k K cs CS sc SC scn SCN", _Reader.colour),
    ("w d", _Reader.pen),
    ("gs", _Reader.veil),
    ("m l c v y re", _Reader.path),
    ("W W* n", _Reader.end),
)
_FOLLOWED: dict[str, _Follow] = {
    operator: follow for operators, follow in _GROUPS for operator in operators.split()
}
_PAINTS = {
    "f": "f",
    "F": "f",
    "f*": "f*",
    "S": "s",
    "s": "s",
    "B": "fs",
    "b": "fs",
    "B*": "f*s",
    "b*": "f*s",
}


def _paint_of(operator: str, operands: Sequence[object]) -> _Paint:
    if operator == "rg":
        red, green, blue = (_number(operand) for operand in operands)
        return _Paint((red, green, blue))
    if operator == "g":
        grey = _number(operands[0])
        return _Paint((grey, grey, grey))
    return _Paint(reason="its colour is not given as red, green and blue")


def _corners_of(points: Sequence[tuple[float, float]]) -> Corners:
    across = [x for x, _ in points]
    down = [y for _, y in points]
    left, top, right, bottom = min(across), min(down), max(across), max(down)
    return (
        round(left, _PLACES),
        round(top, _PLACES),
        round(right, _PLACES),
        round(bottom, _PLACES),
    )


def _number(operand: object) -> float:
    return float(str(operand))
