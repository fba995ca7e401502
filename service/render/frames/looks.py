"""Which looks a page asks for: what a template may tell apart in its blocks."""

from __future__ import annotations

from collections.abc import Container, Iterable
from functools import cache

from service.pages.page import (
    Block,
    Page,
    PictureBlock,
    ShapeBlock,
    SymbolBlock,
    TextBlock,
)
from service.render.frames.frame import (
    Look,
    MarkLook,
    PictureLook,
    ShapeLook,
    SymbolLook,
    TextLook,
)


def look_of(block: Block, *, has_picture: bool) -> Look:
    """Give the look of a block; `has_picture` says whether its photo is there to be drawn."""
    if isinstance(block, TextBlock):
        return _text_look(block.purpose, block.style.shade.value)
    if isinstance(block, PictureBlock):
        return PictureLook(block.purpose, is_empty=not has_picture)
    if isinstance(block, ShapeBlock):
        return _shape_look(block)
    if isinstance(block, SymbolBlock):
        return SymbolLook(block.purpose)
    return MarkLook(block.purpose)


@cache
def _text_look(purpose: str, shade: str) -> TextLook:
    """Keep the looks of texts: most blocks are texts, and they share a few dozen looks."""
    return TextLook(purpose, shade)


def _shape_look(block: ShapeBlock) -> ShapeLook:
    fill = block.fill.value if block.fill else ""
    has_outline = block.outline_mm > 0
    is_dashed = has_outline and block.dashed
    return ShapeLook(block.purpose, fill, has_outline=has_outline, is_dashed=is_dashed)


def looks_in(pages: Iterable[Page], pictures: Container[str]) -> set[Look]:
    """Give every look of some pages once; `pictures` holds the names of the photos there are."""
    return {
        look_of(block, has_picture=has_picture(block, pictures))
        for page in pages
        for block in page.blocks
    }


def has_picture(block: Block, pictures: Container[str]) -> bool:
    """Tell whether a block is a frame whose photo is among those handed in."""
    return isinstance(block, PictureBlock) and bool(block.photo) and block.photo in pictures
