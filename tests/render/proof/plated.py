"""Plates made by hand, whole or damaged, and what the proof says of them.

They are made by the real filler and typesetter, with colours of our own instead of a template's, so
that no test waits for the layout engine.
"""

from __future__ import annotations

import zlib
from collections.abc import Callable
from dataclasses import replace
from functools import cache

from service.errors import ProofFailedError
from service.pages.page import Page, PictureBlock, Shade
from service.render.frames.frame import Colour, Frame, Look, Mould, ShapeLook, TextLook
from service.render.frames.looks import looks_in
from service.render.plates.make import make_plate
from service.render.plates.plate import PictureUse, Plate
from service.render.proof.faces import prove_plates
from service.render.task import FONTS_CONF
from service.render.typeset.setter import Typesetter

FONTS = FONTS_CONF.parent
MARKS = {"caution": b"0 g 0.1 0.1 m 0.9 0.1 l 0.5 0.9 l h f", "fragile": b"0 g 0 0 1 1 re f"}
BLACK: Colour = (0.0, 0.0, 0.0)
_GREYS = {Shade.BLACK: 0.0, Shade.GREY: 0.4, Shade.PALE: 0.9, Shade.WHITE: 1.0}
_COLOURS = {shade.value: (tone, tone, tone) for shade, tone in _GREYS.items()}


@cache
def setter() -> Typesetter:
    """Give the one typesetter of all tests."""
    return Typesetter(FONTS_CONF)


def plate_of(page: Page) -> Plate:
    """Fill a page; its photos are 4 wide and 3 high."""
    photos = {block.photo for block in page.blocks if isinstance(block, PictureBlock)} - {""}
    pictures = {photo: PictureUse(photo.rjust(64, "0"), 120, 90) for photo in photos}
    moulds = {look: _mould(look) for look in looks_in([page], pictures)}
    return make_plate(page, Frame(page.kind, "", moulds, {}), pictures, setter())


def rewritten(plate: Plate, change: Callable[[bytes], bytes]) -> Plate:
    """Change the content of a plate."""
    return replace(plate, content=zlib.compress(change(zlib.decompress(plate.content))))


def faults_in(plate: Plate, page: Page, *, clear_edge_mm: float = 2.0) -> list[str]:
    """Give the faults the proof finds in a plate, none when it passes."""
    (result,) = prove_plates(
        [plate], [page], MARKS, fonts_folder=FONTS, clear_edge_mm=clear_edge_mm
    )
    return list(result.faults) if isinstance(result, ProofFailedError) else []


def faults_of(drawn: Page, wanted: Page | None = None) -> list[str]:
    """Give the faults found when one page is drawn and another, or the same, was asked for."""
    return faults_in(plate_of(drawn), wanted or drawn)


def _mould(look: Look) -> Mould:
    match look:
        case TextLook():
            return Mould(_COLOURS[look.shade])
        case ShapeLook():
            return Mould(_COLOURS.get(look.fill), BLACK)
        case _:
            return Mould(BLACK, BLACK, 0.15)
