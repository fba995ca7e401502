"""Marks as forms: each pictogram once, as filled paths in the unit square.

Drawn by the layout engine from the same file a template would name, and read back from its ink, so
that no second reader of SVG is needed. A form names no resources.
"""

from __future__ import annotations

import io
from collections.abc import Iterator, Sequence
from pathlib import Path

import pikepdf

from service.errors import SlotRefusedError
from service.render.context import MARK_ADDRESS
from service.render.frames.measure.ink import read_ink
from service.render.matrix import Matrix, matrix_of, times

MARK_BOX = (0.0, 0.0, 1.0, 1.0)
"""Left, bottom, right and top of every form; what reaches beyond it is cut off."""
_SIDE_PX = 24
_SIDE_PT = 18.0
_TO_UNIT: Matrix = (1 / _SIDE_PT, 0.0, 0.0, 1 / _SIDE_PT, 0.0, 0.0)
_PLACES = 5
_WHOLE = 1e-4
_PATHS = frozenset({"m", "l", "c", "h", "re"})
_ELEMENT = "mark"
_SUFFIX = ".svg"
_STYLE = (
    f"@page {{ size: {_SIDE_PX}px {_SIDE_PX}px; margin: 0 }} body {{ margin: 0 }}"
    f" img {{ display: block; width: {_SIDE_PX}px; height: {_SIDE_PX}px }}"
)


def draw_marks(templates: Path) -> dict[str, bytes]:
    """Give the operators of every mark by its code; runs in a child process, as `compile_frame`.

    Raises:
        SlotRefusedError: When a mark is drawn by more than filled paths.
        EngineComplaintError: When the engine logs anything.
    """
    codes = sorted(path.stem for path in (templates / "pictograms").glob(f"*{_SUFFIX}"))
    return draw_forms(templates, codes)


def draw_forms(templates: Path, codes: Sequence[str]) -> dict[str, bytes]:
    """Give the operators of some marks, as `draw_marks`.

    Raises:
        SlotRefusedError: When a mark is drawn by more than filled paths.
        AssetError: When a mark is not there.
        EngineComplaintError: When the engine logs anything.
    """
    # The engine looks at its fonts when it is imported, which only the child's environment names.
    from service.render.draw import draw_html  # noqa: PLC0415

    images = "".join(f'<img src="{MARK_ADDRESS}{code}" alt="">' for code in codes)
    pdf = draw_html(f"<html lang=en><style>{_STYLE}</style>{images}</html>", {}, templates)
    with pikepdf.open(io.BytesIO(pdf)) as drawn:
        pages = zip(codes, drawn.pages, strict=True)
        return {code: mark_form(code, page) for code, page in pages}


def mark_form(code: str, page: pikepdf.Page) -> bytes:
    """Give the operators that draw a page of one mark into the unit square.

    Raises:
        SlotRefusedError: When it is drawn by more than filled paths.
    """
    for ink in read_ink(page):
        if ink.reason or ink.manner not in {"fill", "hollow", "pierced"}:
            reason = ink.reason or f"it is drawn by a {ink.manner}"
            raise SlotRefusedError(code + _SUFFIX, element=_ELEMENT, reason=reason)
    return b" ".join(_FormWriter(code).operators(page))


class _FormWriter:
    """Brings the paths of a page into the unit square, each point by itself."""

    def __init__(self, code: str) -> None:
        self._code = code
        self._matrix = _TO_UNIT
        self._saved: list[tuple[Matrix, bytes]] = []
        self._colour = b"0 g"
        self._written_colour = b""
        self._path: list[bytes] = []
        self._points: list[tuple[float, float]] = []

    def operators(self, page: pikepdf.Page) -> Iterator[bytes]:
        for instruction in pikepdf.parse_content_stream(page):
            operator = str(instruction.operator)
            values = [str(operand) for operand in instruction.operands]
            if operator in {"f", "F", "f*"}:
                yield from self._fill(operator)
            elif operator == "n":
                self._check_clip()
            elif operator in {"q", "Q"}:
                self._keep(operator)
            elif operator == "cm":
                self._matrix = times(matrix_of(values), self._matrix)
            elif operator in {"rg", "g"}:
                self._colour = " ".join([*values, operator]).encode()
            elif operator in _PATHS:
                self._add(operator, [float(value) for value in values])

    def _keep(self, operator: str) -> None:
        if operator == "q":
            self._saved.append((self._matrix, self._colour))
        elif self._saved:
            self._matrix, self._colour = self._saved.pop()

    def _add(self, operator: str, values: Sequence[float]) -> None:
        if operator == "re":
            x, y, width, height = values
            corners = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
            for step, corner in zip("mlll", corners, strict=True):
                self._add(step, corner)
            self._add("h", ())
            return
        points = [self._place(*pair) for pair in zip(values[::2], values[1::2], strict=True)]
        self._points += points
        numbers = [_number(part) for point in points for part in point]
        if operator == "m" and self._path and self._path[-1].endswith(b"m"):
            self._path.pop()  # The engine begins each path at its origin and then goes elsewhere.
        self._path.append(b" ".join([*numbers, operator.encode()]))

    def _place(self, x: float, y: float) -> tuple[float, float]:
        a, b, c, d, e, f = self._matrix
        return a * x + c * y + e, b * x + d * y + f

    def _fill(self, operator: str) -> Iterator[bytes]:
        if self._colour != self._written_colour:
            yield self._colour
            self._written_colour = self._colour
        yield from self._path
        yield operator.encode()
        self._path, self._points = [], []

    def _check_clip(self) -> None:
        """Pass over the clipping to the whole mark, which the form's own box does.

        Raises:
            SlotRefusedError: When it is cut off anywhere else.
        """
        corners = {(round(x), round(y)) for x, y in self._points}
        near = all(abs(part - round(part)) < _WHOLE for point in self._points for part in point)
        if corners != {(0, 0), (0, 1), (1, 0), (1, 1)} or not near:
            reason = "a part of it is cut off by a path"
            raise SlotRefusedError(self._code + _SUFFIX, element=_ELEMENT, reason=reason)
        self._path, self._points = [], []


def _number(value: float) -> bytes:
    return f"{round(value, _PLACES) + 0.0:.{_PLACES}f}".rstrip("0").rstrip(".").encode()
