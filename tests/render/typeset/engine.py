"""Glyphs as the layout engine inks them, read from its own file for comparison.

Written apart from the readers of the service, so that one fault cannot hide in both.
"""

from __future__ import annotations

import io
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import pikepdf
from pikepdf import Matrix

from service.render.reading.fonts import FontInFile, fonts_of
from service.units import mm_from_points


@dataclass(frozen=True, slots=True)
class Inked:
    """One glyph: the name of its font, its number, and its origin from the face's top left."""

    font: str
    number: int
    x_mm: float
    y_mm: float


def inked_lines(pdf: bytes) -> list[list[Inked]]:
    """Give the glyphs of each text object of the only page."""
    with pikepdf.open(io.BytesIO(pdf)) as opened:
        page = opened.pages[0]
        pen = _Pen(fonts_of(page.obj.Resources), float(page.mediabox[3]))
        for step in pikepdf.parse_content_stream(page):
            pen.follow(str(step.operator), list(step.operands))
    return pen.lines


class _Pen:
    """Follows the operators the engine is known to write."""

    def __init__(self, fonts: dict[str, FontInFile], height_pt: float) -> None:
        self._fonts = fonts
        self._height_pt = height_pt
        self._stack: list[Matrix] = []
        self._matrix = self._at = Matrix()
        self._font, self._size, self._rise = next(iter(fonts.values())), 0.0, 0.0
        self.lines: list[list[Inked]] = []
        self._steps: dict[str, Callable[[list[Any]], None]] = {
            "q": lambda _: self._stack.append(self._matrix),
            "Q": lambda _: setattr(self, "_matrix", self._stack.pop()),
            "cm": lambda six: setattr(self, "_matrix", _matrix(six) @ self._matrix),
            "BT": lambda _: self.lines.append([]),
            "Tm": lambda six: setattr(self, "_at", _matrix(six) @ self._matrix),
            "Tf": self._choose,
            "Ts": lambda one: setattr(self, "_rise", float(one[0])),
            "TJ": lambda array: self._show(list(array[0])),
            "Tj": self._show,
        }

    def follow(self, operator: str, operands: list[Any]) -> None:
        """Take one step; what shows no text changes nothing."""
        if operator in self._steps:
            self._steps[operator](operands)

    def _choose(self, operands: list[Any]) -> None:
        self._font, self._size = self._fonts[str(operands[0])], float(operands[1])

    def _show(self, parts: list[Any]) -> None:
        for part in parts:
            if isinstance(part, pikepdf.String):
                codes = bytes(part)
                for high, low in zip(codes[::2], codes[1::2], strict=True):
                    self._ink(self._font.glyph(high << 8 | low))
            else:
                self._move(-float(part))

    def _ink(self, number: int) -> None:
        x_pt, y_pt = self._at.transform((0, self._rise))
        x_mm, y_mm = mm_from_points(x_pt), mm_from_points(self._height_pt - y_pt)
        self.lines[-1].append(Inked(self._font.name, number, x_mm, y_mm))
        self._move(self._font.widths.get(number, 1000.0))

    def _move(self, thousandths: float) -> None:
        self._at = self._at.translated(thousandths / 1000 * self._size, 0)


def _matrix(six: list[Any]) -> Matrix:
    return Matrix(*map(float, six))
