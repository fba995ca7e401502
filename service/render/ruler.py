"""The real ruler: Pango with the shipped fonts, the same shaper that sets the ink."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from service.pages.page import Direction, TextStyle
from service.pages.ruler import BrokenText
from service.pages.setting.script import language_of
from service.render.pango import UNITS_PER_PIXEL
from service.render.typeset.pairs import is_plain
from service.render.typeset.setter import Typesetter
from service.units import css_pixels_from_mm, css_pixels_from_points, mm_from_css_pixels

_REMEMBERED = 20_000
"""How many measurements are kept: a card makes some hundred, most of them again and again."""
_SLACK_MM = 0.005
"""Lines are broken a hair before the edge, so that rounding in the engine never pushes a word."""
_BY_FAR_MM = 0.05
"""A text this much shorter than its line fits, however widths are rounded."""


class PangoRuler:
    """Measures text as it will be printed. Not for use by two threads at once."""

    def __init__(self, fonts_conf: Path, setter: Typesetter | None = None) -> None:
        """Measure with a typesetter, or with one of the ruler's own for the fonts of a file.

        Raises:
            OSError: When there are no such fonts.
        """
        self._setter = setter or Typesetter(fonts_conf)
        self._paragraphs = self._setter.paragraphs
        self._broken = lru_cache(_REMEMBERED)(self._break_text)
        self._is_missing = lru_cache(_REMEMBERED)(self._lacks_glyph)

    def break_text(self, text: str, style: TextStyle, *, width_mm: float) -> BrokenText:
        """Break a text into lines no wider than `width_mm`."""
        return self._broken(text, style.size_pt, style.weight, style.language, width_mm)

    def width_mm(self, text: str, style: TextStyle) -> float:
        """Give the advance width of a text set on one line."""
        return self._broken(text, style.size_pt, style.weight, style.language, None).width_mm

    def missing_characters(self, text: str) -> tuple[str, ...]:
        """Name the characters of a text that no shipped font holds, each once, in order."""
        if text.isascii() and text.isprintable():
            return ()
        return tuple(sign for sign in dict.fromkeys(text) if self._is_missing(sign))

    def _break_text(
        self, text: str, size_pt: float, weight: int, language: str, width_mm: float | None
    ) -> BrokenText:
        language = language or language_of(text)
        whole = None if language else self._fitting(text, size_pt, weight, width_mm)
        if whole is not None:
            return whole
        raw = text.encode()
        paragraphs = self._paragraphs
        paragraphs.set_paragraph(
            raw,
            size_px=css_pixels_from_points(size_pt),
            weight=weight,
            language=language,
            width_px=None if width_mm is None else css_pixels_from_mm(width_mm - _SLACK_MM),
        )
        lines, widths_mm = [], []
        for line in paragraphs.lines():
            lines.append(raw[line.start : line.start + line.length].decode().strip(" "))
            widths_mm.append(mm_from_css_pixels(line.width / UNITS_PER_PIXEL))
        rightward = not paragraphs.is_right_to_left(raw)
        direction = Direction.LEFT_TO_RIGHT if rightward else Direction.RIGHT_TO_LEFT
        return BrokenText(tuple(lines), tuple(widths_mm), direction)

    def _fitting(
        self, text: str, size_pt: float, weight: int, width_mm: float | None
    ) -> BrokenText | None:
        """Give a plain text that fits on one line by far: no paragraph need be broken for it."""
        if not is_plain(text) or text.strip(" ") != text or not text:
            return None
        line = self._setter.set_line(
            text, size_pt=size_pt, weight=weight, language="", is_right_to_left=False
        )
        if width_mm is not None and line.width_mm > width_mm - _BY_FAR_MM:
            return None
        return BrokenText((text,), (line.width_mm,), Direction.LEFT_TO_RIGHT)

    def _lacks_glyph(self, sign: str) -> bool:
        self._paragraphs.set_paragraph(
            sign.encode(), size_px=16, weight=400, language="", width_px=None
        )
        return self._paragraphs.unknown_glyphs() > 0
