"""Moulds: what the ink of a specimen says of its look, or why no mould can keep it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence

from service.geometry import Insets, Rect
from service.pages.page import Block, PictureBlock, ShapeBlock, SymbolBlock
from service.render.context import place_inside
from service.render.frames.frame import (
    Colour,
    Look,
    MarkLook,
    Mould,
    PictureLook,
    ShapeLook,
    SymbolLook,
    TextLook,
)
from service.render.frames.measure.ink import Corners, Inked
from service.render.frames.measure.specimen import Specimen, specimen_pictures

_SAME_MM = 0.01
_WORDS = {
    "text": "text",
    "fill": "a filled area",
    "hollow": "an outline",
    "pierced": "an area with holes",
    "stroke": "a thin line",
    "picture": "a picture",
}
Ink = Sequence[Inked]


class UnkeepableInkError(ValueError):
    """Raised when ink is other than a mould can say; the message says how."""


def ink_of_block(page: Iterable[Inked], empty_page: Iterable[Inked]) -> list[Inked]:
    """Take from a page's ink what its template draws whatever the page says."""
    static = Counter(empty_page)
    own = []
    for mark in page:
        if static[mark] > 0:
            static[mark] -= 1
        else:
            own.append(mark)
    return own


def mould_of(specimen: Specimen, ink: Ink) -> Mould:
    """Give the mould that the ink of one specimen fills.

    Raises:
        UnkeepableInkError: When it needs more than a mould.
    """
    if not ink:
        _refuse("it is not drawn at all")
    for mark in ink:
        if mark.reason:
            _refuse(mark.reason)
    return _MEASURES[type(specimen.look)](specimen.block, ink)


def _refuse(reason: str) -> None:
    raise UnkeepableInkError(reason)


def _text(_block: Block, ink: Ink) -> Mould:
    _all_are(ink, "text")
    return Mould(ink=_colour_of(ink))


def _picture(block: Block, ink: Ink) -> Mould:
    pictures = [mark for mark in ink if mark.manner == "picture"]
    outline = [mark for mark in ink if mark.manner != "picture"]
    if not pictures:
        return _empty_frame(ink)
    inner = _place_of_picture(block)
    if len(pictures) != 1 or not _same(pictures[0].corners, inner):
        _refuse("it is not drawn once at its place")
    if not outline:
        return Mould()
    _all_are(outline, "hollow")
    left, top, right, bottom = outline[0].corners
    widths_mm = (inner[0] - left, inner[1] - top, right - inner[2], bottom - inner[3])
    line_mm = round(sum(widths_mm) / len(widths_mm), 2)
    is_even = all(abs(width_mm - line_mm) <= _SAME_MM for width_mm in widths_mm)
    is_one = len({(mark.corners, mark.is_dashed) for mark in outline}) == 1
    if line_mm <= 0 or not is_even or not is_one or outline[0].is_dashed:
        _refuse("its outline is not one even line around it")
    return Mould(line=_colour_of(outline), line_mm=line_mm)


def _empty_frame(ink: Ink) -> Mould:
    _all_are(ink, "stroke")
    widths_mm = {mark.width_mm for mark in ink}
    if len(widths_mm) != 1 or not all(mark.is_dashed for mark in ink):
        _refuse("its outline is not one dashed line")
    return Mould(line=_colour_of(ink), line_mm=widths_mm.pop())


def _shape(block: Block, ink: Ink) -> Mould:
    inside = [mark for mark in ink if mark.manner == "fill"]
    outline = [mark for mark in ink if mark.manner != "fill"]
    if any(not _same(mark.corners, _corners(block.rect)) for mark in inside):
        _refuse("its inside is not filled to its edges")
    if any(mark.manner not in {"hollow", "stroke"} for mark in outline):
        _refuse("it is drawn by more than an inside and an outline")
    is_dashed = isinstance(block, ShapeBlock) and block.dashed
    if any(mark.is_dashed is not is_dashed for mark in outline):
        _refuse("its outline is not drawn as the page asks")
    return Mould(
        ink=_colour_of(inside) if inside else None,
        line=_colour_of(outline) if outline else None,
    )


def _symbol(block: Block, ink: Ink) -> Mould:
    _all_are(ink, "fill")
    if len(ink) != 1:
        _refuse("it is drawn by more than its modules")
    if isinstance(block, SymbolBlock):
        clear_mm = block.quiet_zone_modules * block.module_mm
        clear = Insets(clear_mm, clear_mm, clear_mm, clear_mm)
        if not _same(ink[0].corners, _corners(block.rect.inset(clear))):
            _refuse("its modules are not drawn at their place")
    return Mould(ink=_colour_of(ink))


def _mark(block: Block, ink: Ink) -> Mould:
    # The handles of curves may lie a little outside.
    room_mm = block.rect.width_mm / 10
    for mark in ink:
        left, top, right, bottom = mark.corners
        if not block.rect.holds(Rect(left, top, right - left, bottom - top), tolerance_mm=room_mm):
            _refuse("something is drawn beside it")
    return Mould()


_MEASURES: dict[type[Look], Callable[[Block, Ink], Mould]] = {
    TextLook: _text,
    PictureLook: _picture,
    ShapeLook: _shape,
    SymbolLook: _symbol,
    MarkLook: _mark,
}


def _all_are(ink: Ink, manner: str) -> None:
    for mark in ink:
        if mark.manner != manner:
            _refuse(f"{_WORDS[mark.manner]} is drawn where {_WORDS[manner]} alone is wanted")


def _colour_of(ink: Ink) -> Colour:
    colours = {mark.colour for mark in ink}
    if len(colours) > 1:
        _refuse("it is inked in several colours")
    return colours.pop()


def _place_of_picture(block: Block) -> Corners:
    if not isinstance(block, PictureBlock) or block.photo not in specimen_pictures():
        _refuse("a picture is drawn where there is none")
        return _corners(block.rect)
    inner = place_inside(specimen_pictures()[block.photo], block)
    return _corners(inner.moved(block.rect.x_mm, block.rect.y_mm))


def _corners(rect: Rect) -> Corners:
    return (rect.x_mm, rect.y_mm, rect.right_mm, rect.bottom_mm)


def _same(one: Corners, other: Corners) -> bool:
    return all(abs(a - b) <= _SAME_MM for a, b in zip(one, other, strict=True))
