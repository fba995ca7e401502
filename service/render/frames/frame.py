"""A frame: how one card kind inks each look, and what its template draws by itself.

A look is everything about a block that the template may decide on, without its text, place and
size. A mould is what the layout engine made of it. Colours are red, green and blue from 0 to 1.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from service.geometry import Size
from service.render.plates.plate import FontUse

Colour = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class TextLook:
    """What a template sees of a text; lines, size, weight and alignment are the page's own."""

    purpose: str
    shade: str


@dataclass(frozen=True, slots=True)
class PictureLook:
    """A frame with a photo in it, or an empty one."""

    purpose: str
    is_empty: bool


@dataclass(frozen=True, slots=True)
class ShapeLook:
    """A rectangle; `fill` is "" or a tone."""

    purpose: str
    fill: str
    has_outline: bool
    is_dashed: bool


@dataclass(frozen=True, slots=True)
class SymbolLook:
    """A QR symbol."""

    purpose: str


@dataclass(frozen=True, slots=True)
class MarkLook:
    """A pictogram."""

    purpose: str


Look = TextLook | PictureLook | ShapeLook | SymbolLook | MarkLook


@dataclass(frozen=True, slots=True)
class Mould:
    """How a look is inked.

    `ink` colours text, symbol or the inside of a shape, None where there is none; `line` and
    `line_mm` are the outline: of the picture itself (drawn around it, outside), of the empty frame
    (inside it, dashed), or the colour of a shape's own, whose thickness the page gives.
    """

    ink: Colour | None = None
    line: Colour | None = None
    line_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class StaticInk:
    """What a template draws whatever the page says, beneath all slots: operators and fonts."""

    operators: bytes
    fonts: tuple[FontUse, ...]


@dataclass(frozen=True, slots=True)
class Frame:
    """All moulds of one card kind; `sha256` names templates, fonts and engine that made them."""

    kind: str
    sha256: str
    moulds: Mapping[Look, Mould]
    statics: Mapping[Size, StaticInk]
