"""What the print templates are given: one frozen context, with every number already worked out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol

from service.geometry import Rect, Size
from service.pages.page import (
    Align,
    Block,
    MarkBlock,
    Page,
    PictureBlock,
    ShapeBlock,
    SymbolBlock,
    TextBlock,
)
from service.symbols.outline import symbol_path

MARK_ADDRESS = "underlid:mark/"
PHOTO_ADDRESS = "underlid:photo/"


@dataclass(frozen=True, slots=True)
class Picture:
    """A print-ready picture: JPEG bytes, their SHA-256 and size in pixels."""

    jpeg: bytes
    sha256: str
    width_px: int
    height_px: int


@dataclass(frozen=True, slots=True)
class TextContext:
    """Lines with their place and setting."""

    purpose: str
    rect: Rect
    lines: tuple[str, ...]
    size_pt: float
    leading_mm: float
    weight: int
    align: str
    ink: str
    direction: str
    language: str


@dataclass(frozen=True, slots=True)
class PictureContext:
    """A frame and the picture inside it; `address` is empty where there is no picture."""

    purpose: str
    rect: Rect
    inner: Rect
    address: str


@dataclass(frozen=True, slots=True)
class SymbolContext:
    """A QR symbol as one path in a view box of `side_modules`, clear margin included."""

    purpose: str
    rect: Rect
    side_modules: int
    path: str


@dataclass(frozen=True, slots=True)
class MarkContext:
    """A pictogram by the address of its drawing."""

    purpose: str
    rect: Rect
    address: str


@dataclass(frozen=True, slots=True)
class ShapeContext:
    """A rectangle; `fill` is empty or a tone, `line` solid or dashed."""

    purpose: str
    rect: Rect
    fill: str
    outline_mm: float
    line: str
    radius_mm: float


BlockContext = TextContext | PictureContext | SymbolContext | MarkContext | ShapeContext


@dataclass(frozen=True, slots=True)
class PageContext:
    """One face: the template that draws it, its size and its blocks in the order of reading."""

    template: str
    size: Size
    blocks: tuple[BlockContext, ...]


@dataclass(frozen=True, slots=True)
class DocumentContext:
    """Faces of one size."""

    size: Size
    pages: tuple[PageContext, ...]


def make_document(pages: Sequence[Page], pictures: Mapping[str, Picture]) -> DocumentContext:
    """Turn pages of one size into what the templates need.

    Raises:
        ValueError: When the pages are of different sizes.
    """
    sizes = {page.size for page in pages}
    if len(sizes) != 1:
        message = "the pages of one document must have one size"
        raise ValueError(message)
    return DocumentContext(sizes.pop(), tuple(_make_page(page, pictures) for page in pages))


def _make_page(page: Page, pictures: Mapping[str, Picture]) -> PageContext:
    blocks = tuple(_make_block(block, pictures) for block in page.blocks)
    return PageContext(f"{page.kind}/card.html", page.size, blocks)


def _make_block(block: Block, pictures: Mapping[str, Picture]) -> BlockContext:
    if isinstance(block, TextBlock):
        return _make_text(block)
    if isinstance(block, PictureBlock):
        picture = pictures.get(block.photo) if block.photo else None
        inner = place_inside(picture, block) if picture else block.rect
        address = f"{PHOTO_ADDRESS}{picture.sha256}" if picture else ""
        return PictureContext(block.purpose, block.rect, inner, address)
    if isinstance(block, SymbolBlock):
        side = block.symbol.side_modules + 2 * block.quiet_zone_modules
        return SymbolContext(block.purpose, block.rect, side, symbol_path(block.symbol))
    if isinstance(block, MarkBlock):
        return MarkContext(block.purpose, block.rect, f"{MARK_ADDRESS}{block.mark}")
    return _make_shape(block)


def _make_text(block: TextBlock) -> TextContext:
    style = block.style
    return TextContext(
        purpose=block.purpose,
        rect=block.rect,
        lines=block.lines,
        size_pt=style.size_pt,
        leading_mm=style.leading_mm,
        weight=style.weight,
        align=style.align.value,
        ink=style.shade.value,
        direction=block.direction.value,
        language=block.language,
    )


def _make_shape(block: ShapeBlock) -> ShapeContext:
    return ShapeContext(
        purpose=block.purpose,
        rect=block.rect,
        fill=block.fill.value if block.fill else "",
        outline_mm=block.outline_mm,
        line="dashed" if block.dashed else "solid",
        radius_mm=block.radius_mm,
    )


class _HasPixels(Protocol):
    """Whatever has a size in pixels."""

    @property
    def width_px(self) -> int:
        """Pixels across."""
        ...

    @property
    def height_px(self) -> int:
        """Pixels down."""
        ...


def place_inside(picture: _HasPixels, block: PictureBlock) -> Rect:
    """Place a picture in its space, relative to the space's corner, as large as it gets."""
    frame = block.rect
    scale = min(frame.width_mm / picture.width_px, frame.height_mm / picture.height_px)
    width_mm, height_mm = picture.width_px * scale, picture.height_px * scale
    return Rect(
        (frame.width_mm - width_mm) * _SHARES[block.across],
        (frame.height_mm - height_mm) * _SHARES[block.down],
        width_mm,
        height_mm,
    )


_SHARES = {Align.START: 0.0, Align.CENTRE: 0.5, Align.END: 1.0}
"""Which share of the free space lies before the picture."""
