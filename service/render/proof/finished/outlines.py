"""Does every glyph that is set travel with the file, with its own outline and width?"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache
from pathlib import Path

import uharfbuzz

from service.render.reading.objects import Dictionary, Value, refuse, whole_number
from service.render.reading.pdf_file import PdfFile

_UNITS_PER_EM = 1000.0
_ROUNDING = 1.0
"""What the widths of a file may be off, in thousandths of the em."""
_DEFAULT_WIDTH = 1000.0

_Outline = tuple[int, tuple[int, int, int, int]]
"""The advance width of a glyph and the box around its ink, in units of its font."""


def outline_faults(
    file: PdfFile, number: int, shipped: Path, glyphs: Iterable[int]
) -> Iterator[str]:
    """Say which glyphs of a font of the file are not those of the shipped font."""
    descendant = _descendant(file, number)
    embedded = _font_of(file.stream(_described(file, descendant)).content)
    own, widths = _shipped(shipped), _widths(file, descendant)
    default = descendant.get("/DW", _DEFAULT_WIDTH)
    per_unit = _UNITS_PER_EM / own.face.upem
    if embedded.face.upem != own.face.upem:
        yield f"the font {shipped.stem} is scaled"
    for glyph in sorted(glyphs):
        outline = _outline(own, glyph)
        width = widths.get(glyph, default)
        if _outline(embedded, glyph) != outline:
            yield f"glyph {glyph} of the font {shipped.stem} is not embedded as it is shipped"
        elif not isinstance(width, float) or abs(width - outline[0] * per_unit) > _ROUNDING:
            yield f"glyph {glyph} of the font {shipped.stem} has the width {width!r}"


def _descendant(file: PdfFile, number: int) -> Dictionary:
    """Give the font itself, which must be written by the numbers of its glyphs."""
    font = file.dictionary(file.value(number))
    inner = file.array(font.get("/DescendantFonts"))
    descendant = file.dictionary(inner[0] if inner else None)
    if (font.get("/Subtype"), font.get("/Encoding")) != ("/Type0", "/Identity-H") or (
        descendant.get("/CIDToGIDMap") != "/Identity"
    ):
        refuse("a font is not written by the numbers of its glyphs")
    return descendant


def _described(file: PdfFile, descendant: Dictionary) -> Value:
    """Give where the font program stands."""
    return file.dictionary(descendant.get("/FontDescriptor")).get("/FontFile2")


def _widths(file: PdfFile, descendant: Dictionary) -> dict[int, Value]:
    """Give widths by glyph: runs of `first [width ...]` or `first last width`."""
    listed = file.array(descendant.get("/W", []))
    found: dict[int, Value] = {}
    entries = iter(listed)
    for start in entries:
        first, second = whole_number(start), next(entries)
        if isinstance(second, list):
            found |= {first + step: width for step, width in enumerate(second)}
        else:
            found |= dict.fromkeys(range(first, whole_number(second) + 1), next(entries))
    return found


@lru_cache(maxsize=32)
def _shipped(path: Path) -> uharfbuzz.Font:
    return uharfbuzz.Font(uharfbuzz.Face(uharfbuzz.Blob.from_file_path(str(path))))


def _font_of(program: bytes) -> uharfbuzz.Font:
    return uharfbuzz.Font(uharfbuzz.Face(uharfbuzz.Blob(program)))


def _outline(font: uharfbuzz.Font, glyph: int) -> _Outline:
    box = font.get_glyph_extents(glyph)
    sides = (0, 0, 0, 0) if box is None else (box.x_bearing, box.y_bearing, box.width, box.height)
    return font.get_glyph_h_advance(glyph), sides
