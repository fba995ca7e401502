"""The name of a plate: a hash of everything that makes its ink.

Two pages of one name are one plate, in a cache and in a file. The frame's hash stands for the
templates, fonts and engines, and the hash of our own sources for the code that fills, sets and
proves: no number has to be raised by hand.
"""

from __future__ import annotations

import hashlib
from array import array
from collections.abc import Mapping
from functools import cache
from pathlib import Path

from service.pages.page import (
    Block,
    MarkBlock,
    Page,
    PictureBlock,
    SymbolBlock,
    TextBlock,
)
from service.render.plates.plate import PictureUse

_DIGEST_BYTES = 16
_RENDER = Path(__file__).parents[1]
_SOURCES = ("plates", "typeset", "proof", "reading", "pango.py", "raster.py")
"""What decides, beside the frame, how a plate is inked and what its proof looks at."""


def plate_key(page: Page, frame_sha256: str, pictures: Mapping[str, PictureUse]) -> str:
    """Give the name of a page's plate, 32 hexadecimal digits."""
    words = [_code_digest(), frame_sha256, page.kind]
    measures = [page.size.width_mm, page.size.height_mm]
    for block in page.blocks:
        rect = block.rect
        measures += (rect.x_mm, rect.y_mm, rect.width_mm, rect.height_mm)
        words += (type(block).__name__, block.purpose)
        _add_values(block, pictures, words, measures)
    digest = hashlib.blake2b("\0".join(words).encode(), digest_size=_DIGEST_BYTES)
    digest.update(array("d", measures))
    return digest.hexdigest()


@cache
def _code_digest() -> str:
    digest = hashlib.sha256()
    for name in _SOURCES:
        path = _RENDER / name
        for source in sorted(path.glob("*.py")) if path.is_dir() else [path]:
            digest.update(source.read_bytes())
    return digest.hexdigest()


def _add_values(
    block: Block, pictures: Mapping[str, PictureUse], words: list[str], measures: list[float]
) -> None:
    """Add what a block says; each kind of block adds as many measures as any of its kind.

    Words cannot run into one another: no text on a page holds the sign between them.
    """
    if isinstance(block, TextBlock):
        style = block.style
        measures += (style.size_pt, style.weight, style.leading_ratio, len(block.lines))
        words += (block.whole, block.direction, block.language, style.align, style.shade)
        words += block.lines
    elif isinstance(block, PictureBlock):
        use = pictures.get(block.photo)
        measures += (use.width_px, use.height_px) if use else (0, 0)
        shown = use.sha256 if use else ""
        words += (shown, block.photo, block.alt, block.across, block.down)
    elif isinstance(block, SymbolBlock):
        measures.append(block.quiet_zone_modules)
        modules = b"".join(block.symbol.modules).hex()
        words += (block.symbol.payload, modules, block.alt)
    elif isinstance(block, MarkBlock):
        words += (block.mark, block.alt)
    else:
        measures += (block.outline_mm, block.dashed, block.radius_mm)
        words.append(block.fill or "")
