"""Every QR symbol says what it should, seen by a decoder of other authors."""

from __future__ import annotations

from collections.abc import Iterator

import pypdfium2
import zxingcpp
from PIL import ImageDraw, ImageStat

from service.geometry import Point, Rect
from service.pages.page import SymbolBlock
from service.render.proof.places import around, at
from service.render.raster import Raster, raster_of

RESOLUTIONS_DPI = (300, 203)
"""A good office printer halved, and a common label printer."""
LEAST_CONTRAST_RATIO = 0.70
"""Symbol contrast of the best grade (ISO/IEC 15415; from memory)."""
_WHITE = 255
_MIDDLE = 128
_CLEAR = 200
"""What is darker than this in the clear margin is ink."""


def symbol_faults(page: pypdfium2.PdfPage, block: SymbolBlock) -> Iterator[str]:
    """Say what is wrong with one symbol of a page of an open document."""
    here = f"the QR symbol {at(block.rect)}"
    rasters = [raster_of(page, resolution_dpi=dpi, rect=block.rect) for dpi in RESOLUTIONS_DPI]
    for dpi, raster in zip(RESOLUTIONS_DPI, rasters, strict=True):
        read = [found.text for found in zxingcpp.read_barcodes(raster.crop(block.rect))]
        if read != [block.symbol.payload]:
            said = " and ".join(map(repr, read)) or "nothing"
            yield f"{here} says {said} at {dpi} dpi, not {block.symbol.payload!r}"
    yield from (f"{here} {fault}" for fault in _module_faults(rasters[0], block))


def modules_rect(block: SymbolBlock) -> Rect:
    """Give the square of the modules, without the clear margin."""
    side_mm = block.symbol.side_modules * block.module_mm
    return Rect(
        block.rect.x_mm + (block.rect.width_mm - side_mm) / 2,
        block.rect.y_mm + (block.rect.height_mm - side_mm) / 2,
        side_mm,
        side_mm,
    )


def _module_faults(raster: Raster, block: SymbolBlock) -> Iterator[str]:
    dark, light = _tones(raster, block)
    wrong = sum(tone >= _MIDDLE for tone in dark) + sum(tone < _MIDDLE for tone in light)
    contrast = sum(light) / len(light) - sum(dark) / len(dark)
    if wrong:
        yield f"has {wrong} modules of the wrong tone"
    elif contrast < LEAST_CONTRAST_RATIO * _WHITE:
        yield "has too little contrast"
    if _darkest_in_margin(raster, block) < _CLEAR:
        yield "has ink in its clear margin"


def _tones(raster: Raster, block: SymbolBlock) -> tuple[list[int], list[int]]:
    """Give the tones that the dark and the light modules have at their centres."""
    inner = modules_rect(block)
    dark: list[int] = []
    light: list[int] = []
    for row, modules in enumerate(block.symbol.modules):
        for column, is_dark in enumerate(modules):
            centre = Point(
                inner.x_mm + (column + 0.5) * block.module_mm,
                inner.y_mm + (row + 0.5) * block.module_mm,
            )
            (dark if is_dark else light).append(raster.tone(centre))
    return dark, light


def _darkest_in_margin(raster: Raster, block: SymbolBlock) -> int:
    """Look at the clear margin alone, a dot away from the modules and from the outer edge."""
    dot_mm = 1 / raster.dots_per_mm_x
    modules = around(modules_rect(block), x_mm=dot_mm, y_mm=dot_mm)
    image = raster.image.copy()
    ImageDraw.Draw(image).rectangle(raster.box_of(modules), fill=_WHITE)
    margin = image.crop(raster.box_of(around(block.rect, x_mm=-dot_mm, y_mm=-dot_mm)))
    return int(ImageStat.Stat(margin).extrema[0][0])
