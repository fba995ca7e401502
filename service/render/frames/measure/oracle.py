"""Does the engine draw a page as its plate would? Compared glyph for glyph and dot for dot.

This is what makes a frame certain: whatever a template does to a slot, a difference that could be
seen in print is found here, even if no rule of ours foresaw it.
"""

from __future__ import annotations

import io
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from contextlib import ExitStack
from dataclasses import dataclass

import pikepdf
import pypdfium2
from PIL import Image, ImageChops, ImageFilter

from service.geometry import Insets, Point, Rect
from service.pages.page import Block, Page, SymbolBlock
from service.render.frames.measure.glyphs import page_glyphs
from service.render.raster import opened
from service.render.reading.glyphs import Glyph
from service.render.reading.shaping import Shaper
from service.units import POINTS_PER_INCH, mm_from_dots, points_from_mm

SAME_PLACE_MM = 0.01
"""A glyph nearer than this stands where it should: a tenth of a dot at 254 dpi."""
_SAME_PLACE_RATIO = 0.002
"""So does one this near in ems: the engine rounds each kerning to a thousandth of an em."""
SAME_DOTS_RATIO = 0.02
"""The share of a slot's dots that may differ: edges between dots, which are one dot thick."""
_RESOLUTION_DPI = 150
_SAME_TONE = 48
"""Two tones nearer than this are an edge, not another ink."""
_IS_OTHER_INK = [255 * (apart > _SAME_TONE) for apart in range(256)]
_AROUND_MM = 1.0
_LEAST_MODULE_MM = mm_from_dots(4, resolution_dpi=_RESOLUTION_DPI)
"""Smaller modules are all edges here; where a symbol stands is measured from its ink."""


@dataclass(frozen=True, slots=True)
class Difference:
    """Where a page is drawn otherwise: its number from 0, the block, and what differs."""

    page_number: int
    block: Block | None
    words: str


def differences(
    theirs: bytes, ours: bytes, pages: Sequence[Page], shaper: Shaper
) -> Iterator[Difference]:
    """Compare the pages of two files of the same pages, the engine's and that of the plates."""
    with ExitStack() as stack:
        written = [stack.enter_context(pikepdf.open(io.BytesIO(pdf))) for pdf in (theirs, ours)]
        shown = [stack.enter_context(opened(pdf)) for pdf in (theirs, ours)]
        for number, page in enumerate(pages):
            wanted, found = (_visible(page_glyphs(pdf.pages[number]), shaper) for pdf in written)
            for glyph in _unmatched(wanted, found):
                words = f"a sign stands elsewhere, at {_place(glyph.origin)}"
                yield Difference(number, _block_at(page, glyph.origin), words)
            yield from _dot_differences(number, page, shown[0][number], shown[1][number])


def _visible(glyphs: Sequence[Glyph], shaper: Shaper) -> list[Glyph]:
    return [
        glyph
        for glyph in glyphs
        if not shaper.knows(glyph.font) or glyph.number not in shaper.blanks(glyph.font)
    ]


def _unmatched(wanted: Sequence[Glyph], found: Sequence[Glyph]) -> Iterator[Glyph]:
    """Give the glyphs of either side that have no counterpart in the other."""
    free: dict[tuple[str, int], list[Glyph]] = defaultdict(list)
    for glyph in found:
        free[glyph.font, glyph.number].append(glyph)
    for glyph in wanted:
        others = free[glyph.font, glyph.number]
        match = next((other for other in others if _stand_alike(glyph, other)), None)
        if match is None:
            yield glyph
        else:
            others.remove(match)
    for others in free.values():
        yield from others


def _stand_alike(one: Glyph, other: Glyph) -> bool:
    near_mm = max(SAME_PLACE_MM, one.size_mm * _SAME_PLACE_RATIO)
    return (
        abs(one.origin.x_mm - other.origin.x_mm) <= near_mm
        and abs(one.origin.y_mm - other.origin.y_mm) <= near_mm
        and abs(one.size_mm - other.size_mm) <= SAME_PLACE_MM
    )


def _dot_differences(
    number: int, page: Page, theirs: pypdfium2.PdfPage, ours: pypdfium2.PdfPage
) -> Iterator[Difference]:
    whole = Rect(0.0, 0.0, page.size.width_mm, page.size.height_mm)
    areas: Mapping[Block | None, Rect] = {block: _around(block) for block in page.blocks} or {
        None: whole
    }
    for block, area in areas.items():
        if isinstance(block, SymbolBlock) and block.module_mm < _LEAST_MODULE_MM:
            continue
        apart = _other_ink(_dots(theirs, area), _dots(ours, area))
        ratio = apart.histogram()[-1] / (apart.width * apart.height)
        # The modules of a symbol are all edges: a mask is painted by whole dots, a path is not.
        if ratio > SAME_DOTS_RATIO and not isinstance(block, SymbolBlock):
            yield Difference(number, block, f"{ratio:.0%} of its dots differ")
        elif apart.filter(ImageFilter.MinFilter(3)).getbbox():
            yield Difference(number, block, "three dots by three differ in one place")


def _dots(page: pypdfium2.PdfPage, area: Rect) -> Image.Image:
    """Draw an area in colour; two pages of one size are cut alike."""
    width_pt, height_pt = page.get_size()
    cuts_pt = (
        points_from_mm(area.x_mm),
        height_pt - points_from_mm(area.bottom_mm),
        width_pt - points_from_mm(area.right_mm),
        points_from_mm(area.y_mm),
    )
    bitmap = page.render(
        scale=_RESOLUTION_DPI / POINTS_PER_INCH, crop=tuple(max(0.0, cut) for cut in cuts_pt)
    )
    image: Image.Image = bitmap.to_pil()
    return image.convert("RGB")


def _other_ink(one: Image.Image, other: Image.Image) -> Image.Image:
    """Give white dots where the two differ in red, green or blue."""
    red, green, blue = ImageChops.difference(one, other).split()
    return ImageChops.lighter(ImageChops.lighter(red, green), blue).point(_IS_OTHER_INK)


def _around(block: Block) -> Rect:
    return block.rect.inset(Insets(-_AROUND_MM, -_AROUND_MM, -_AROUND_MM, -_AROUND_MM))


def _block_at(page: Page, point: Point) -> Block | None:
    spot = Rect(point.x_mm, point.y_mm, 0.0, 0.0)
    inside = (block for block in page.blocks if block.rect.holds(spot, tolerance_mm=_AROUND_MM))
    return next(inside, page.blocks[0] if page.blocks else None)


def _place(point: Point) -> str:
    return f"{point.x_mm:.2f} mm from the left and {point.y_mm:.2f} mm from the top"
