"""The proof: nothing leaves unread.

Each face is read back from its finished file by readers that share no code with the engine: its
text, its fonts and glyphs, its symbols, its pictures and marks, and how far its ink reaches. What
does not read as the page says is a fault, and a file with a fault is not handed over.
"""

from __future__ import annotations

import hashlib
import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

import pikepdf
import pypdfium2

from service.errors import ProofFailedError
from service.geometry import Size
from service.pages.page import MarkBlock, Page, PictureBlock, SymbolBlock, TextBlock
from service.render.proof.ink import (
    INK_DPI,
    edge_faults,
    hidden_faults,
    mark_faults,
    picture_faults,
)
from service.render.proof.symbols import symbol_faults
from service.render.proof.text import TextProof, lines_of
from service.render.raster import opened, raster_of
from service.render.reading.face import read_face
from service.render.reading.fonts import font_faults, shipped_fonts
from service.render.reading.glyphs import Glyph, read_glyphs
from service.render.reading.shaping import Shaper

CLEAR_EDGE_MM = 2.0
"""Nothing is printed nearer to the edge of a face: the slip of a die or a knife; ours."""
_SIZE_MM = 0.01


@dataclass(frozen=True, slots=True)
class FaceProof:
    """What was read back without a fault, and the hash of the file it was read from."""

    sha256: str
    faces: int
    lines: int
    symbols: int
    pictures: int
    marks: int


def prove_faces(
    faces_pdf: bytes,
    pages: Sequence[Page],
    *,
    fonts_folder: Path,
    clear_edge_mm: float = CLEAR_EDGE_MM,
) -> FaceProof:
    """Prove that page i of a file shows what `pages[i]` says, with the fonts of `fonts_folder`.

    Raises:
        ProofFailedError: With every fault found, each with its page and place.
    """
    faults = list(_faults(faces_pdf, pages, fonts_folder, clear_edge_mm))
    if faults:
        raise ProofFailedError(faults)
    blocks = [block for page in pages for block in page.blocks]
    return FaceProof(
        hashlib.sha256(faces_pdf).hexdigest(),
        len(pages),
        len(lines_of([block for block in blocks if isinstance(block, TextBlock)])),
        sum(isinstance(block, SymbolBlock) for block in blocks),
        sum(isinstance(block, PictureBlock) and bool(block.photo) for block in blocks),
        sum(isinstance(block, MarkBlock) for block in blocks),
    )


def _faults(
    faces_pdf: bytes, pages: Sequence[Page], fonts_folder: Path, clear_edge_mm: float
) -> Iterator[str]:
    shipped = shipped_fonts(fonts_folder)
    prover = _Prover(Shaper(shipped), clear_edge_mm=clear_edge_mm)
    with pikepdf.open(io.BytesIO(faces_pdf)) as written, opened(faces_pdf) as shown:
        if len(shown) != len(pages):
            yield f"the file has {len(shown)} pages instead of {len(pages)}"
            return
        yield from font_faults(written.pages, shipped)
        for number, page in enumerate(pages):
            glyphs = read_glyphs(written.pages[number])
            where = (
                f"page {number + 1} ({page.kind} {page.container_number}, {page.number}/{page.of})"
            )
            for fault in prover.faults(page, shown[number], glyphs):
                yield f"{where}: {fault}"


class _Prover:
    """Proves one face after another with the same shaper."""

    def __init__(self, shaper: Shaper, *, clear_edge_mm: float) -> None:
        """Keep what all faces share."""
        self._shaper = shaper
        self._clear_edge_mm = clear_edge_mm

    def faults(
        self, page: Page, shown: pypdfium2.PdfPage, glyphs: Sequence[Glyph]
    ) -> Iterator[str]:
        """Say everything wrong with a face."""
        read = read_face(shown)
        raster = raster_of(shown, resolution_dpi=INK_DPI)
        blocks = page.blocks
        lines = lines_of([block for block in blocks if isinstance(block, TextBlock)])
        yield from _size_faults(page, read.size)
        yield from _empty_boxes(glyphs)
        yield from TextProof(lines, read.characters, glyphs).faults(self._shaper)
        yield from hidden_faults(read.characters, raster)
        for block in blocks:
            if isinstance(block, SymbolBlock):
                yield from symbol_faults(shown, block)
        yield from picture_faults([b for b in blocks if isinstance(b, PictureBlock)], read)
        yield from mark_faults([b for b in blocks if isinstance(b, MarkBlock)], raster)
        yield from edge_faults(page, read, raster, clear_mm=self._clear_edge_mm)


def _size_faults(page: Page, size: Size) -> Iterator[str]:
    off_mm = max(abs(size.width_mm - page.size.width_mm), abs(size.height_mm - page.size.height_mm))
    if off_mm > _SIZE_MM:
        yield f"the face is {size.width_mm:.2f} x {size.height_mm:.2f} mm large"


def _empty_boxes(glyphs: Sequence[Glyph]) -> Iterator[str]:
    for glyph in glyphs:
        if glyph.number == 0:
            yield (
                f"an empty box stands for a sign no font has, at {glyph.origin.x_mm:.1f} mm"
                f" from the left and {glyph.origin.y_mm:.1f} mm from the top"
            )
