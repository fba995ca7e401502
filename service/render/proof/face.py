"""One plate against its page: everything that is looked at on a face, in one place."""

from __future__ import annotations

import zlib
from collections.abc import Iterator

import pypdfium2

from service.geometry import Rect
from service.pages.page import MarkBlock, Page, SymbolBlock, TextBlock
from service.render.plates.plate import Plate, PlateProof
from service.render.proof.drawn import DrawnProof
from service.render.proof.ink import FaceInk, edge_faults, hidden_faults, scale_for
from service.render.proof.places import bounds_of
from service.render.proof.symbols import symbol_faults
from service.render.proof.text.extract import extract_faults
from service.render.proof.text.fonts import PlateFonts
from service.render.proof.text.lines import inked_lines, lines_of
from service.render.proof.text.match import LineReader, TextProof
from service.render.raster import draw_dots
from service.render.reading.content import read_content
from service.render.reading.face import page_size, read_extents, read_text
from service.render.reading.glyphs import RunReader

_SIZE_MM = 0.01


class FaceProof:
    """A plate, its page, and the page of the file it was written to."""

    def __init__(
        self, plate: Plate, page: Page, shown: pypdfium2.PdfPage, fonts: PlateFonts, runs: RunReader
    ) -> None:
        """Read the plate's content, and draw the page once."""
        self._plate = plate
        self._page = page
        self._shown = shown
        self._fonts = fonts
        self._whole = Rect(0, 0, page.size.width_mm, page.size.height_mm)
        height_mm = page.size.height_mm
        self._content = read_content(zlib.decompress(plate.content), height_mm=height_mm)
        self._inked = inked_lines(self._content.runs, runs, height_mm=height_mm)
        self._lines = lines_of(block for block in page.blocks if isinstance(block, TextBlock))
        self._extents = tuple(read_extents(shown, height_mm=height_mm))
        scale = scale_for(self._lines)
        dots = draw_dots(shown, self._whole, dots_per_mm=scale)
        self._ink = FaceInk(dots, dots_per_mm=scale)

    @property
    def result(self) -> PlateProof:
        """What was read back, and how far ink reaches."""
        kinds = [type(block) for block in self._page.blocks]
        pictures = [drawn for drawn in self._content.drawn if drawn.name[:1] == "P"]
        ink = bounds_of(self._extents) or Rect(0, 0, 0, 0)
        symbols, marks = kinds.count(SymbolBlock), kinds.count(MarkBlock)
        return PlateProof(len(self._lines), symbols, len(pictures), marks, ink)

    def faults(self, reader: LineReader, clear_edge_mm: float) -> Iterator[str]:
        """Say everything wrong with the face."""
        yield from self._size_faults()
        if self._content.unread:
            yield f"the plate says {self._content.unread!r}, which the proof does not know"
        yield from self._fonts.faults(self._inked)
        yield from self._text_faults(reader)
        for block in self._page.blocks:
            if isinstance(block, SymbolBlock):
                yield from symbol_faults(self._shown, block)
        drawn = DrawnProof(self._content.drawn, self._plate.pictures, self._ink)
        yield from drawn.faults(self._page)
        yield from edge_faults(self._whole, self._extents, clear_mm=clear_edge_mm)

    def _size_faults(self) -> Iterator[str]:
        wanted = self._page.size
        for size in (self._plate.size, page_size(self._shown)):
            off_mm = max(
                abs(size.width_mm - wanted.width_mm), abs(size.height_mm - wanted.height_mm)
            )
            if off_mm > _SIZE_MM:
                yield f"the face is {size.width_mm:.2f} x {size.height_mm:.2f} mm large"
                return

    def _text_faults(self, reader: LineReader) -> Iterator[str]:
        text = TextProof(self._lines, self._inked, self._fonts)
        yield from text.faults(reader)
        owners = [line for line in text.owners if line is not None]
        yield from extract_faults(read_text(self._shown), owners)
        yield from hidden_faults(self._inked, self._ink, self._fonts)


def page_name(page: Page) -> str:
    """Say which face a page is."""
    return f"{page.kind} {page.container_number}, {page.number}/{page.of}"
