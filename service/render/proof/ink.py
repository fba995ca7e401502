"""Ink is where it should be: every sign visible, every picture and mark there, no edge crossed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from PIL import ImageDraw, ImageOps

from service.geometry import Rect
from service.pages.page import MarkBlock, Page, PictureBlock
from service.render.proof.places import around, at
from service.render.raster import Raster
from service.render.reading.face import Character, ReadFace

INK_DPI = 150
"""Coarse on purpose: it only has to tell ink from paper."""
_VISIBLE_STEP = 40
"""Least difference between the lightest and the darkest dot of what can be seen; of 255."""
_LOOK_MM = 0.2
"""How far around a sign its ink is looked for: PDFium sets small type to whole dots."""
_PAPER = 250
"""Lighter than this is paper."""
_WHITE = 255
_ROUNDING_MM = 0.1
_LEAST_PICTURE_RATIO = 0.9
"""A picture fills its frame in one direction at least; the rest is rounding and hairlines."""


def hidden_faults(characters: Sequence[Character], raster: Raster) -> Iterator[str]:
    """Say which signs the file names but nobody can see: clipped, covered, or in paper colour."""
    hidden = [
        character
        for character in characters
        if not character.text.isspace()
        and character.ink.width_mm > 0
        and character.ink.height_mm > 0
        and not _is_visible(raster, around(character.ink, x_mm=_LOOK_MM, y_mm=_LOOK_MM))
    ]
    if hidden:
        text = "".join(character.text for character in hidden)
        yield f"{text[:60]!r} is in the file but not to be seen, {at(hidden[0].ink)}"


def picture_faults(blocks: Sequence[PictureBlock], read: ReadFace) -> Iterator[str]:
    """Say which frames have no picture, or one that leaves or does not fill them."""
    for block in blocks:
        if block.photo and not any(_fills(picture, block.rect) for picture in read.pictures):
            yield f"the photo {block.photo} is not printed in its frame {at(block.rect)}"


def mark_faults(blocks: Sequence[MarkBlock], raster: Raster) -> Iterator[str]:
    """Say which marks are not drawn."""
    for block in blocks:
        if not _is_visible(raster, block.rect):
            yield f"the mark {block.mark} is not printed {at(block.rect)}"


def edge_faults(page: Page, read: ReadFace, raster: Raster, *, clear_mm: float) -> Iterator[str]:
    """Say what reaches out of the page or into the strip of `clear_mm` along its edges."""
    whole = Rect(0, 0, page.size.width_mm, page.size.height_mm)
    for extent in read.extents:
        if not whole.holds(extent, tolerance_mm=_ROUNDING_MM):
            yield f"something reaches out of the page, {at(extent)}"
    strip = raster.image.copy()
    inner = around(whole, x_mm=-clear_mm, y_mm=-clear_mm)
    ImageDraw.Draw(strip).rectangle(raster.box_of(inner), fill=_WHITE)
    dark = ImageOps.invert(strip).point([0] * (_WHITE - _PAPER + 1) + [_WHITE] * _PAPER)
    box = dark.getbbox()
    if box is not None:
        yield f"ink stands within {clear_mm:g} mm of the edge, {at(_place_of(box, raster))}"


def _fills(picture: Rect, frame: Rect) -> bool:
    share = max(picture.width_mm / frame.width_mm, picture.height_mm / frame.height_mm)
    return frame.holds(picture, tolerance_mm=_ROUNDING_MM) and share >= _LEAST_PICTURE_RATIO


def _is_visible(raster: Raster, rect: Rect) -> bool:
    darkest, lightest = raster.crop(rect).getextrema()
    return float(str(lightest)) - float(str(darkest)) >= _VISIBLE_STEP


def _place_of(box: tuple[int, int, int, int], raster: Raster) -> Rect:
    left, top, right, bottom = box
    return Rect(
        left / raster.dots_per_mm_x,
        top / raster.dots_per_mm_y,
        (right - left) / raster.dots_per_mm_x,
        (bottom - top) / raster.dots_per_mm_y,
    )
