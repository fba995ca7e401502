"""Every QR symbol says what it should, seen by a decoder of other authors."""

from __future__ import annotations

from collections.abc import Iterator

import pypdfium2
import zxingcpp
from PIL import Image

from service.geometry import Rect
from service.pages.page import SymbolBlock
from service.render.proof.places import at
from service.render.raster import Dots, draw_dots
from service.symbols.symbol import LEAST_DOTS

LEAST_CONTRAST_RATIO = 0.70
"""Symbol contrast of the best grade (ISO/IEC 15415; from memory)."""
_WHITE = 255
_MIDDLE = 128
_CLEAR = 200
"""What is darker than this in the clear margin is ink."""
_QR_ALONE = zxingcpp.BarcodeFormats(zxingcpp.BarcodeFormat.QRCode)
_DARK_TONES, _LIGHT_TONES = bytes(range(_MIDDLE)), bytes(range(_MIDDLE, _WHITE + 1))
_MODULES = bytes([1] * _MIDDLE + [0] * (_WHITE + 1 - _MIDDLE))
"""What a tone says: 1 dark, 0 light."""


def symbol_faults(page: pypdfium2.PdfPage, block: SymbolBlock) -> Iterator[str]:
    """Say what is wrong with one symbol of a page of an open document.

    It is drawn with the fewest printer dots a module may have.
    """
    here = f"the QR symbol {at(block.rect)}"
    dots = draw_dots(page, block.rect, dots_per_mm=LEAST_DOTS / block.module_mm)
    read = _decode(dots)
    if read != [block.symbol.payload]:
        said = " and ".join(map(repr, read)) or "nothing"
        yield f"{here} says {said}, not {block.symbol.payload!r}"
    yield from (f"{here} {fault}" for fault in _module_faults(dots, block))


def modules_rect(block: SymbolBlock) -> Rect:
    """Give the square of the modules, without the clear margin."""
    side_mm = block.symbol.side_modules * block.module_mm
    return Rect(
        block.rect.x_mm + (block.rect.width_mm - side_mm) / 2,
        block.rect.y_mm + (block.rect.height_mm - side_mm) / 2,
        side_mm,
        side_mm,
    )


def _decode(dots: Dots) -> list[str]:
    """Read what a picture of one symbol says: as it should stand, else wherever it is found."""
    height = len(dots.memory) // dots.row_bytes
    view = memoryview(dots.memory).cast("B", (height, dots.row_bytes))
    for is_pure in (True, False):
        found = zxingcpp.read_barcodes(
            view,
            formats=_QR_ALONE,
            try_rotate=False,
            try_downscale=False,
            try_invert=False,
            is_pure=is_pure,
        )
        # In pure mode the decoder may give a symbol without content where there is none.
        if said := [one.text for one in found if one.text]:
            return said
    return []


def _module_faults(dots: Dots, block: SymbolBlock) -> Iterator[str]:
    """Compare the dot in the middle of each module, and look at the margin a dot away from them."""
    side = block.symbol.side_modules
    first = LEAST_DOTS * block.quiet_zone_modules
    last = first + LEAST_DOTS * side
    box = (first, first, last, last)
    tones = dots.image.resize((side, side), Image.Resampling.NEAREST, box).tobytes()
    found, wanted = tones.translate(_MODULES), b"".join(block.symbol.modules)
    if found != wanted:
        wrong = sum(one != other for one, other in zip(found, wanted, strict=True))
        yield f"has {wrong} modules of the wrong tone"
    elif _contrast(tones) < LEAST_CONTRAST_RATIO * _WHITE:
        yield "has too little contrast"
    if _darkest_in_margin(dots.image, first, last) < _CLEAR:
        yield "has ink in its clear margin"


def _darkest_in_margin(image: Image.Image, first: int, last: int) -> int:
    """Look at the four strips around the modules, a dot away from them and from the outer edge."""
    end = image.width - 1
    strips = (
        (1, 1, end, first - 1),
        (1, last + 1, end, end),
        (1, first - 1, first - 1, last + 1),
        (last + 1, first - 1, end, last + 1),
    )
    return min(int(str(image.crop(strip).getextrema()[0])) for strip in strips)


def _contrast(tones: bytes) -> float:
    """Give how far the mean tones of light and dark modules lie apart."""
    dark, light = tones.translate(None, _LIGHT_TONES), tones.translate(None, _DARK_TONES)
    return sum(light) / len(light) - sum(dark) / len(dark)
