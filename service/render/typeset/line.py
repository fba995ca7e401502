"""One line of text as glyphs, ready for a content stream."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SetLine:
    """A line as it is inked, from its left edge and its baseline, whichever way it reads.

    `operators` go between `BT x y Td` and `ET`: font, glyphs and shifts, in points. `width_mm` is
    the advance width. `ascent_mm` and `descent_mm` are the logical extents above and below the
    baseline, both positive. `glyphs` maps the number of each shipped font used (counted in the
    order of `fonts.toml` from 0) to its glyph numbers and what each stands for.
    """

    operators: bytes
    width_mm: float
    ascent_mm: float
    descent_mm: float
    glyphs: Mapping[int, Mapping[int, str]]
