"""What an independent reader finds on a page: how large it is, how far it reaches, what it says.

Read by PDFium from the finished file, in mm from the top left corner; nothing here knows what was
meant to be printed.
"""

from __future__ import annotations

import ctypes
from collections.abc import Iterator

import pypdfium2
import pypdfium2.raw as pdfium

from service.geometry import Rect, Size
from service.units import mm_from_points

_UTF16_BYTES = 2


def page_size(page: pypdfium2.PdfPage) -> Size:
    """Give the size of a page."""
    width_pt = pdfium.FPDF_GetPageWidthF(page.raw)
    height_pt = pdfium.FPDF_GetPageHeightF(page.raw)
    return Size(mm_from_points(width_pt), mm_from_points(height_pt))


def read_extents(page: pypdfium2.PdfPage, *, height_mm: float) -> Iterator[Rect]:
    """Give the bounds of every object of a page before clipping, a form being one object."""
    sides_pt = [ctypes.c_float() for _ in range(4)]
    for number in range(pdfium.FPDFPage_CountObjects(page.raw)):
        part = pdfium.FPDFPage_GetObject(page.raw, number)
        if pdfium.FPDFPageObj_GetBounds(part, *sides_pt):
            left, bottom, right, top = (mm_from_points(side_pt.value) for side_pt in sides_pt)
            yield Rect(left, height_mm - top, right - left, top - bottom)


def read_text(page: pypdfium2.PdfPage) -> str:
    """Give all text of a page in the reader's order, with the blanks it sees."""
    text_page = pdfium.FPDFText_LoadPage(page.raw)
    count = pdfium.FPDFText_CountChars(text_page)
    units = (ctypes.c_ushort * (count + 1))()
    written = pdfium.FPDFText_GetText(text_page, 0, count, units)
    pdfium.FPDFText_ClosePage(text_page)
    return bytes(units)[: _UTF16_BYTES * max(0, written - 1)].decode("utf-16-le", "replace")
