"""Measures of the glyphs of a shipped font, each looked up once."""

from __future__ import annotations

import uharfbuzz

_THOUSAND = 1000
Box = tuple[float, float, float, float]
"""Left, bottom, right and top of a glyph's ink in ems, from its origin, y upwards."""


class Advances(dict[int, float]):
    """Advance widths, looked up when first asked for, in whole thousandths as a file has them."""

    def __init__(self, font: uharfbuzz.Font) -> None:
        """Look into this font."""
        super().__init__()
        self._font = font

    def __missing__(self, number: int) -> float:
        """Look one up and keep it."""
        units: int = self._font.get_glyph_h_advance(number)
        self[number] = round(units * _THOUSAND / self._font.face.upem) / _THOUSAND
        return self[number]


class Boxes(dict[int, Box]):
    """Extents of ink, looked up when first asked for; all zero where there is none."""

    def __init__(self, font: uharfbuzz.Font) -> None:
        """Look into this font."""
        super().__init__()
        self._font = font

    def __missing__(self, number: int) -> Box:
        """Look one up and keep it."""
        found, units_per_em = self._font.get_glyph_extents(number), self._font.face.upem
        self[number] = (0.0, 0.0, 0.0, 0.0)
        if found is not None:
            left, top = found.x_bearing / units_per_em, found.y_bearing / units_per_em
            bottom = top + found.height / units_per_em
            self[number] = (left, bottom, left + found.width / units_per_em, top)
        return self[number]
