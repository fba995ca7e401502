"""The ruler sheet as a file: inked like every card, and read back before it is handed over."""

from __future__ import annotations

import io
from collections.abc import Iterator

import pypdfium2
import pypdfium2.raw as pdfium

from service.errors import ProofFailedError
from service.geometry import Rect
from service.pages.page import Page, ShapeBlock, TextBlock
from service.render.compose.sheets import Parts, write_faces
from service.render.frames.looks import looks_in
from service.render.frames.store import FrameStore
from service.render.plates.make import make_plate
from service.render.proof.places import at as at_place
from service.render.raster import opened
from service.render.reading.fonts import shipped_fonts
from service.render.task import FONTS_CONF
from service.render.typeset.setter import Typesetter
from service.units import mm_from_points

EXACT_MM = 0.02
"""How exactly a line must lie: a tenth of what a person reads from a ruler at the best."""


def draw_ruler_sheet(page: Page, frames: FrameStore) -> bytes:
    """Ink the sheet as it is, uncorrected, and read it back.

    Raises:
        ProofFailedError: When a line or a text is not there.
        ServiceError: When its template cannot be used.
    """
    frame = frames.find_or_make(page.kind, page.size, looks_in([page], {}))
    plate = make_plate(page, frame, {}, Typesetter(FONTS_CONF))
    fonts = tuple(shipped_fonts(FONTS_CONF.parent).items())
    nothing = dict[str, bytes]().__getitem__
    target = io.BytesIO()
    write_faces(target, [plate], Parts(nothing, nothing, fonts), title=page.title)
    pdf = target.getvalue()
    prove_ruler_sheet(pdf, page)
    return pdf


def prove_ruler_sheet(pdf: bytes, page: Page) -> None:
    """Prove that every line lies where the page says, and that every text can be read.

    Raises:
        ProofFailedError: With every line or text that is not there.
    """
    if faults := list(_faults(pdf, page)):
        raise ProofFailedError(faults)


def _faults(pdf: bytes, page: Page) -> Iterator[str]:
    with opened(pdf) as document:
        shown = document[0]
        inked = list(_inked(shown, page.size.height_mm))
        read = _without_blanks(shown.get_textpage().get_text_range())
        for block in page.blocks:
            if isinstance(block, ShapeBlock) and not any(_same(block.rect, at) for at in inked):
                yield f"there is no line {at_place(block.rect)}"
            if isinstance(block, TextBlock) and _without_blanks(block.whole) not in read:
                yield f"{block.whole!r} cannot be read"


def _inked(shown: pypdfium2.PdfPage, height_mm: float) -> Iterator[Rect]:
    """Give the box of each filled shape of the page."""
    for shape in shown.get_objects([pdfium.FPDF_PAGEOBJ_PATH]):
        left, bottom, right, top = (mm_from_points(side_pt) for side_pt in shape.get_bounds())
        yield Rect(left, height_mm - top, right - left, top - bottom)


def _same(one: Rect, other: Rect) -> bool:
    return one.holds(other, tolerance_mm=EXACT_MM) and other.holds(one, tolerance_mm=EXACT_MM)


def _without_blanks(text: str) -> str:
    return "".join(text.split())
