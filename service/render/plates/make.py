"""Fills a frame with a page: the plate, in one pass over the page's blocks.

Nothing is laid out here. The fit has decided every place and line, the frame says how each look is
inked, and the typesetter turns lines into glyphs.
"""

from __future__ import annotations

import zlib
from array import array
from collections.abc import Mapping
from typing import Protocol

from service.geometry import Rect
from service.pages.describe import describe_page
from service.pages.page import (
    Align,
    Block,
    Direction,
    MarkBlock,
    Page,
    PictureBlock,
    ShapeBlock,
    SymbolBlock,
    TextBlock,
)
from service.render.context import place_inside
from service.render.frames.frame import Colour, Frame, Mould, StaticInk
from service.render.frames.looks import look_of
from service.render.plates.ink import (
    box_of,
    dashed,
    fill_colour,
    filled,
    line_colour,
    stroked,
    symbol_mask,
)
from service.render.plates.plate import FontUse, Link, PictureUse, Plate
from service.render.typeset.line import SetLine
from service.units import points_from_mm

_DEFLATE_LEVEL = 4
"""A third faster than the usual 6, for a twentieth more bytes."""
_OPENED = "https://"
"""A symbol that holds such an address can be clicked in a viewer."""


class Setter(Protocol):
    """What sets a line of text; `service.render.typeset.setter` has the real one."""

    def set_line(
        self, text: str, *, size_pt: float, weight: int, language: str, is_right_to_left: bool
    ) -> SetLine:
        """Set one line as glyphs."""
        ...

    def strut(self, *, size_pt: float, weight: int, language: str) -> tuple[float, float]:
        """Give the height of a line of the first face, and its baseline from the top, in mm."""
        ...


def make_plate(
    page: Page, frame: Frame, pictures: Mapping[str, PictureUse], setter: Setter
) -> Plate:
    """Make the plate of a page; `pictures` are those that can be printed, by the photo's name.

    Raises:
        KeyError: When the frame has no mould for a look of the page.
    """
    filler = _Filler(page, frame, pictures, setter)
    static = frame.statics.get(page.size)
    if static:
        filler.ink_static(static)
    for block in page.blocks:
        filler.ink(block)
    return filler.plate(describe_page(page))


class _Filler:
    """Inks one block after another, and remembers what was used."""

    def __init__(
        self, page: Page, frame: Frame, pictures: Mapping[str, PictureUse], setter: Setter
    ) -> None:
        self._face = page.size
        self._moulds = frame.moulds
        self._pictures = pictures
        self._setter = setter
        self._operators: list[str] = []
        self._colour: Colour | None = None
        self._glyphs: dict[int, dict[int, str]] = {}
        self._used_pictures: dict[PictureUse, int] = {}
        self._used_marks: dict[str, None] = {}
        self._links: list[Link] = []

    def ink_static(self, static: StaticInk) -> None:
        """Ink what the template draws by itself, its settings shut in."""
        self._operators.append(f"q {static.operators.decode('latin-1')} Q")
        for use in static.fonts:
            texts = dict(zip(array("H", use.glyphs), use.texts, strict=True))
            self._glyphs.setdefault(use.font, {}).update(texts)

    def ink(self, block: Block) -> None:
        """Ink a block."""
        has_picture = isinstance(block, PictureBlock) and block.photo in self._pictures
        mould = self._moulds[look_of(block, has_picture=has_picture)]
        if isinstance(block, TextBlock):
            self._ink_text(block, mould)
        elif isinstance(block, PictureBlock):
            drawn = self._picture(block, mould) if has_picture else self._empty(block, mould)
            self._operators.append(drawn)
        elif isinstance(block, SymbolBlock):
            self._ink_symbol(block, mould)
        elif isinstance(block, MarkBlock):
            self._used_marks.setdefault(block.mark)
            box = box_of(block.rect, self._face)
            self._operators.append(f"q {box.unit} /M{block.mark} Do Q")
        else:
            self._ink_shape(block, mould)

    def plate(self, alt: str) -> Plate:
        """Give the plate of all that was inked."""
        content = "\n".join(self._operators).encode("latin-1")
        return Plate(
            self._face,
            zlib.compress(content, _DEFLATE_LEVEL),
            tuple(_font_use(font, self._glyphs[font]) for font in sorted(self._glyphs)),
            tuple(self._used_pictures),
            tuple(self._used_marks),
            alt,
            tuple(self._links),
        )

    def _ink_text(self, block: TextBlock, mould: Mould) -> None:
        style, language = block.style, block.language
        size_pt, weight, pitch_mm = style.size_pt, style.weight, style.leading_mm
        is_right_to_left = block.direction is Direction.RIGHT_TO_LEFT
        height_mm, baseline_mm = self._setter.strut(
            size_pt=size_pt, weight=weight, language=language
        )
        strut_mm = baseline_mm + (pitch_mm - height_mm) / 2
        top_mm = block.rect.y_mm
        self._fill_in(mould.ink)
        for text in filter(None, block.lines):
            line = self._setter.set_line(
                text,
                size_pt=size_pt,
                weight=weight,
                language=language,
                is_right_to_left=is_right_to_left,
            )
            # A face of another script may reach higher than the first: CSS then lets the line grow.
            own_mm = (pitch_mm + line.ascent_mm - line.descent_mm) / 2
            above_mm = max(strut_mm, own_mm)
            x_pt = points_from_mm(_start_mm(block, line.width_mm))
            y_pt = points_from_mm(self._face.height_mm - top_mm - above_mm)
            shown = line.operators.decode("latin-1")
            self._operators.append(f"BT {x_pt:.3f} {y_pt:.3f} Td {shown} ET")
            top_mm += above_mm + pitch_mm - min(strut_mm, own_mm)
            self._note(line)

    def _note(self, line: SetLine) -> None:
        for font, glyphs in line.glyphs.items():
            known = self._glyphs.get(font)
            if known is None:
                known = self._glyphs[font] = {}
            known.update(glyphs)

    def _picture(self, block: PictureBlock, mould: Mould) -> str:
        use = self._pictures[block.photo]
        number = self._used_pictures.setdefault(use, len(self._used_pictures))
        inner = place_inside(use, block).moved(block.rect.x_mm, block.rect.y_mm)
        box = box_of(inner, self._face)
        drawn = f"q {box.unit} /P{number} Do Q"
        if mould.line is None:
            return drawn
        width = points_from_mm(mould.line_mm)
        return f"{drawn} {line_colour(mould.line)} {stroked(box.grown(width), width, 0)}"

    def _empty(self, block: PictureBlock, mould: Mould) -> str:
        if mould.line is None:
            return ""
        box, width = box_of(block.rect, self._face), points_from_mm(mould.line_mm)
        return f"{line_colour(mould.line)} {dashed(box, width)}"

    def _ink_symbol(self, block: SymbolBlock, mould: Mould) -> None:
        symbol, rect = block.symbol, block.rect
        side = symbol.side_modules + 2 * block.quiet_zone_modules
        clear_mm = block.quiet_zone_modules * rect.width_mm / side
        inner_mm = symbol.side_modules * rect.width_mm / side
        inner = Rect(rect.x_mm + clear_mm, rect.y_mm + clear_mm, inner_mm, inner_mm)
        if symbol.payload.casefold().startswith(_OPENED):
            self._links.append(Link(rect, symbol.payload))
        self._fill_in(mould.ink)
        self._operators.append(symbol_mask(symbol, box_of(inner, self._face)))

    def _ink_shape(self, block: ShapeBlock, mould: Mould) -> None:
        box, radius = box_of(block.rect, self._face), points_from_mm(block.radius_mm)
        if mould.ink is not None:
            self._fill_in(mould.ink)
            self._operators.append(filled(box, radius))
        if mould.line is not None and block.outline_mm:
            width = points_from_mm(block.outline_mm)
            line = dashed(box, width) if block.dashed else stroked(box, width, radius)
            self._operators.append(f"{line_colour(mould.line)} {line}")

    def _fill_in(self, colour: Colour | None) -> None:
        """Change the colour that fills, where it is another."""
        if colour is not None and colour != self._colour:
            self._colour = colour
            self._operators.append(fill_colour(colour))


def _start_mm(block: TextBlock, width_mm: float) -> float:
    """Give where a line begins on the left."""
    rect = block.rect
    align = block.style.align
    if align is Align.CENTRE:
        return rect.x_mm + (rect.width_mm - width_mm) / 2
    ends_right = (align is Align.END) is not (block.direction is Direction.RIGHT_TO_LEFT)
    return rect.right_mm - width_mm if ends_right else rect.x_mm


def _font_use(font: int, glyphs: Mapping[int, str]) -> FontUse:
    numbers = sorted(glyphs)
    # The glyph of the blank may also stand for narrower ones; whoever searches types a blank.
    texts = tuple(" " if glyphs[n].isspace() else glyphs[n] for n in numbers)
    return FontUse(font, array("H", numbers).tobytes(), texts)
