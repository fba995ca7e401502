"""A plate: one face's finished ink, independent of where and how often it is placed.

Its content is a PDF content stream (ISO 32000-1, 7.8.2) in points, origin at the face's bottom left
corner. The names it uses are the same in every plate, so that plates share the resources of a file:
`/F3` is the fourth shipped font, `/P0` the first picture of this plate, `/Mfragile` a mark.
"""

from __future__ import annotations

from dataclasses import dataclass

from service.geometry import Rect, Size


@dataclass(frozen=True, slots=True)
class FontUse:
    """The glyphs a plate shows from one shipped font.

    `font` counts the shipped fonts in the order of `fonts.toml` from 0. `glyphs` are the numbers of
    the font's own glyphs, ascending, each once, as unsigned 16-bit little-endian integers; `texts`
    gives what each of them stands for, in the same order, "" where a neighbour speaks for it.
    """

    font: int
    glyphs: bytes
    texts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PictureUse:
    """A picture by the SHA-256 of its JPEG file, and its size in pixels."""

    sha256: str
    width_px: int
    height_px: int


@dataclass(frozen=True, slots=True)
class Link:
    """An address that a viewer opens where a rectangle of the face is clicked."""

    rect: Rect
    address: str


@dataclass(frozen=True, slots=True)
class Plate:
    """One face as ink; `content` is deflated (RFC 1950), `alt` its words as they are read."""

    size: Size
    content: bytes
    fonts: tuple[FontUse, ...]
    pictures: tuple[PictureUse, ...]
    marks: tuple[str, ...]
    alt: str
    links: tuple[Link, ...] = ()


@dataclass(frozen=True, slots=True)
class PlateProof:
    """What was read back from a plate without a fault, and how far its ink reaches on the face."""

    lines: int
    symbols: int
    pictures: int
    marks: int
    ink: Rect


@dataclass(frozen=True, slots=True)
class ProvedPlate:
    """A plate with its proof; nothing else is ever printed."""

    plate: Plate
    proof: PlateProof
