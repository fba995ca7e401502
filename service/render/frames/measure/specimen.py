"""Specimens: for each look a few blocks that have nothing in common but the look.

What a mould cannot say (a place, a size, an alignment, the text) differs from one specimen of a
look to the next, so that a template that makes ink depend on it is found out.
"""

from __future__ import annotations

import hashlib
import io
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from PIL import Image

from service.geometry import Rect, Size
from service.pages.page import (
    Align,
    Block,
    Direction,
    MarkBlock,
    Page,
    PictureBlock,
    Shade,
    ShapeBlock,
    SymbolBlock,
    TextBlock,
    TextStyle,
)
from service.render.context import Picture
from service.render.frames.frame import (
    Look,
    MarkLook,
    PictureLook,
    ShapeLook,
    SymbolLook,
    TextLook,
)
from service.symbols.symbol import Level, Symbol, encode_symbol
from service.units import points_from_mm

SPECIMEN_MARK = "fragile"
_PHOTO = "specimen.jpg"
_PAYLOAD = "https://example/1"
_QUIET_ZONE_MODULES = 4
_ROW_SHARE = 0.1
"""The leading of a line of specimen, in short sides of its area, where that is less than 5 mm."""
_LARGEST_ROW_MM = 5.0
_LEADING_RATIO = 1.25


@dataclass(frozen=True, slots=True)
class Specimen:
    """One block of a look alone on a page."""

    look: Look
    block: Block


@dataclass(frozen=True, slots=True)
class _Room:
    """Where a specimen stands: shares of an area, different for each specimen of a look."""

    left_ratio: float
    top_ratio: float
    width_ratio: float
    height_ratio: float

    def within(self, area: Rect) -> Rect:
        """Give the place in an area."""
        return Rect(
            area.x_mm + self.left_ratio * area.width_mm,
            area.y_mm + self.top_ratio * area.height_mm,
            self.width_ratio * area.width_mm,
            self.height_ratio * area.height_mm,
        )


# Odd measures: where a side is a whole number of dashes long, rounding decides how many there are.
_ROOMS = (_Room(0.1, 0.15, 0.4487, 0.3913), _Room(0.25, 0.3, 0.6479, 0.5461))


@dataclass(frozen=True, slots=True)
class _Wording:
    lines: tuple[str, ...]
    weight: int
    align: Align
    direction: Direction = Direction.LEFT_TO_RIGHT
    language: str = ""


_WORDINGS = (
    _Wording(("Afg 120 fi", "plain line"), 400, Align.START),
    _Wording(("Éy (7.1) q",), 700, Align.END, language="en"),
    _Wording(("Mid — set",), 600, Align.CENTRE),
    _Wording(("ארון 12",), 400, Align.START, Direction.RIGHT_TO_LEFT, "he"),
)


def make_specimens(looks: Sequence[Look], size: Size) -> tuple[Specimen, ...]:
    """Give the specimens of some looks, those of one look together."""
    face = Rect(0.0, 0.0, size.width_mm, size.height_mm)
    return tuple(Specimen(look, block) for look in looks for block in _blocks_of(look, face))


def make_crowd(looks: Sequence[Look], size: Size) -> tuple[Block, ...]:
    """Give one block of each look, side by side on one face: there, slots have neighbours."""
    columns = max(1, math.ceil(math.sqrt(len(looks))))
    width_mm, height_mm = size.width_mm / columns, size.height_mm / columns
    cells = (
        Rect(width_mm * (number % columns), height_mm * (number // columns), width_mm, height_mm)
        for number in range(len(looks))
    )
    return tuple(_blocks_of(look, cell)[0] for look, cell in zip(looks, cells, strict=True))


def specimen_pages(
    kind: str, size: Size, specimens: Sequence[Specimen], crowd: Sequence[Block]
) -> tuple[Page, ...]:
    """Give an empty page, one for each specimen, and the crowd's."""
    alone = [(specimen.block,) for specimen in specimens]
    return tuple(Page(kind, "", "", 1, 1, size, blocks) for blocks in ((), *alone, tuple(crowd)))


@cache
def specimen_pictures() -> Mapping[str, Picture]:
    """Give the one photo, by the name the specimens use."""
    data = io.BytesIO()
    Image.new("RGB", (80, 60), (120, 130, 140)).save(data, "JPEG")
    jpeg = data.getvalue()
    return {_PHOTO: Picture(jpeg, hashlib.sha256(jpeg).hexdigest(), 80, 60)}


def _blocks_of(look: Look, area: Rect) -> tuple[Block, ...]:
    rects = tuple(room.within(area) for room in _ROOMS)
    match look:
        case TextLook():
            return tuple(_text(look, wording, area, step) for step, wording in enumerate(_WORDINGS))
        case PictureLook(purpose, is_empty):
            photo = "" if is_empty else _PHOTO
            return tuple(PictureBlock(purpose, rect, photo, "") for rect in rects)
        case ShapeLook():
            return _shapes(look, rects)
        case SymbolLook(purpose):
            return tuple(_symbol(purpose, rect) for rect in rects)
        case MarkLook(purpose):
            return tuple(MarkBlock(purpose, _square(rect), SPECIMEN_MARK, "") for rect in rects)


def _text(look: TextLook, wording: _Wording, area: Rect, step: int) -> TextBlock:
    side_mm = min(area.width_mm, area.height_mm)
    row_mm = min(_LARGEST_ROW_MM, side_mm * _ROW_SHARE) * (1 + step / 8)
    style = TextStyle(
        round(points_from_mm(row_mm / _LEADING_RATIO), 2),
        wording.weight,
        _LEADING_RATIO,
        wording.align,
        Shade(look.shade),
        wording.language,
    )
    rect = Rect(
        area.x_mm + area.width_mm * (0.08 + step / 20),
        area.y_mm + area.height_mm * (0.1 + step / 10),
        area.width_mm * 0.7,
        style.leading_mm * len(wording.lines),
    )
    whole = " ".join(wording.lines)
    return TextBlock(
        look.purpose, rect, wording.lines, style, whole, wording.direction, wording.language
    )


def _shapes(look: ShapeLook, rects: Sequence[Rect]) -> tuple[Block, ...]:
    """Give a sharp shape and, as the engine draws only plain ones alike, a round one."""
    fill = Shade(look.fill) if look.fill else None
    least_mm = min(rects[0].width_mm, rects[0].height_mm)
    outlines_mm = (0.31, 0.53) if look.has_outline else (0.0, 0.0)
    radii_mm = (0.0, 0.0) if look.is_dashed else (0.0, min(1.5, least_mm / 8))
    return tuple(
        ShapeBlock(look.purpose, rect, fill, outline_mm, look.is_dashed, radius_mm)
        for rect, outline_mm, radius_mm in zip(rects, outlines_mm, radii_mm, strict=True)
    )


def _symbol(purpose: str, rect: Rect) -> SymbolBlock:
    symbol = _specimen_symbol()
    module_mm = _square(rect).width_mm / symbol.full_side_modules
    return SymbolBlock(purpose, _square(rect), symbol, module_mm, _QUIET_ZONE_MODULES, "")


@cache
def _specimen_symbol() -> Symbol:
    return encode_symbol(_PAYLOAD, level=Level.M)


def _square(rect: Rect) -> Rect:
    side_mm = min(rect.width_mm, rect.height_mm)
    return Rect(rect.x_mm, rect.y_mm, side_mm, side_mm)
