"""A typesetter without fonts: every sign is half an em wide and its glyph is its code."""

from __future__ import annotations

from service.render.typeset.line import SetLine
from service.units import mm_from_points

ASCENT_RATIO = 0.9
DESCENT_RATIO = 0.3


class FakeSetter:
    """Sets lines that can be worked out by hand; a line that begins with "^" is a tall one."""

    def set_line(
        self, text: str, *, size_pt: float, weight: int, language: str, is_right_to_left: bool
    ) -> SetLine:
        """Give a line whose operators name the text."""
        em_mm = mm_from_points(size_pt)
        ascent_ratio = ASCENT_RATIO * (2 if text.startswith("^") else 1)
        way = "left" if is_right_to_left else "right"
        operators = f"/F0 {size_pt:g} Tf ({text}|{weight}|{language}|{way}) Tj".encode()
        glyphs = {0: {ord(sign): sign for sign in text}}
        return SetLine(
            operators, em_mm * len(text) / 2, em_mm * ascent_ratio, em_mm * DESCENT_RATIO, glyphs
        )

    def strut(self, *, size_pt: float, weight: int, language: str) -> tuple[float, float]:
        """Give the extents of a plain line."""
        del weight, language
        em_mm = mm_from_points(size_pt)
        return em_mm * (ASCENT_RATIO + DESCENT_RATIO), em_mm * ASCENT_RATIO
