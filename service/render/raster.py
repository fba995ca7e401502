"""Rasters of a finished PDF: what is shown on the screen, and what the proof looks at.

Drawn by PDFium, which shares no code with the engine that set the page.
"""

from __future__ import annotations

import ctypes
import io
import math
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass

import pypdfium2
import pypdfium2.raw as pdfium
from PIL import Image

from service.geometry import Point, Rect
from service.units import POINTS_PER_INCH, dots_from_mm, mm_from_points, points_from_mm

_WORD_BYTES = 4
_WHITE = b"\xff"
_HAIR = 1e-6
"""Taken off before rounding up, so that 8.0000001 dots are 8."""


@dataclass(frozen=True, slots=True)
class Raster:
    """A grey picture of a page or a part of it, 8 bits a dot, 0 is black.

    `origin` is where the top left corner of its first dot lies on the page. PDFium stretches a page
    to whole dots, so the two scales differ a little from each other and from what was asked for.
    """

    image: Image.Image
    origin: Point
    dots_per_mm_x: float
    dots_per_mm_y: float

    def tone(self, point: Point) -> int:
        """Give the tone of the dot at a point of the page."""
        x = int((point.x_mm - self.origin.x_mm) * self.dots_per_mm_x)
        y = int((point.y_mm - self.origin.y_mm) * self.dots_per_mm_y)
        return int(str(self.image.getpixel((x, y))))

    def crop(self, rect: Rect) -> Image.Image:
        """Cut out the dots of a rectangle of the page, at least one of them."""
        left, top, right, bottom = self.box_of(rect)
        return self.image.crop((left, top, max(left + 1, right), max(top + 1, bottom)))

    def box_of(self, rect: Rect) -> tuple[int, int, int, int]:
        """Give left, top, right and bottom of a rectangle of the page in dots of this picture."""
        return (
            round((rect.x_mm - self.origin.x_mm) * self.dots_per_mm_x),
            round((rect.y_mm - self.origin.y_mm) * self.dots_per_mm_y),
            round((rect.right_mm - self.origin.x_mm) * self.dots_per_mm_x),
            round((rect.bottom_mm - self.origin.y_mm) * self.dots_per_mm_y),
        )


@contextmanager
def opened(pdf: bytes) -> Iterator[pypdfium2.PdfDocument]:
    """Open a PDF for reading back and close it again."""
    document = pypdfium2.PdfDocument(pdf)
    try:
        yield document
    finally:
        document.close()


def render_page_png(pdf: bytes, page_number: int, *, resolution_dpi: float) -> bytes:
    """Draw one page, counted from 1, as a PNG in colour.

    Raises:
        IndexError: The file has no such page.
    """
    with opened(pdf) as document:
        if not 1 <= page_number <= len(document):
            message = f"page {page_number} of {len(document)}"
            raise IndexError(message)
        bitmap = document[page_number - 1].render(scale=resolution_dpi / POINTS_PER_INCH)
        data = io.BytesIO()
        bitmap.to_pil().save(data, "PNG", dpi=(resolution_dpi, resolution_dpi))
    return data.getvalue()


def raster_of(
    page: pypdfium2.PdfPage, *, resolution_dpi: float, rect: Rect | None = None
) -> Raster:
    """Draw a page of an open document, or all dots of it that `rect` touches, in grey."""
    width_mm, height_mm = (mm_from_points(side_pt) for side_pt in page.get_size())
    wanted = Rect(0, 0, width_mm, height_mm) if rect is None else rect
    cuts_mm = (
        wanted.x_mm,
        height_mm - wanted.bottom_mm,
        width_mm - wanted.right_mm,
        wanted.y_mm,
    )
    cuts_dots = [
        math.floor(dots_from_mm(max(0.0, cut_mm), resolution_dpi=resolution_dpi))
        for cut_mm in cuts_mm
    ]
    scale = resolution_dpi / POINTS_PER_INCH
    # PDFium's wrapper rounds up: half a dot less gives the whole number wanted.
    crop_pt = tuple(max(0.0, dots - 0.5) / scale for dots in cuts_dots)
    bitmap = page.render(scale=scale, grayscale=True, crop=crop_pt)
    image: Image.Image = bitmap.to_pil().convert("L")
    dots_per_mm_x = math.ceil(dots_from_mm(width_mm, resolution_dpi=resolution_dpi)) / width_mm
    dots_per_mm_y = math.ceil(dots_from_mm(height_mm, resolution_dpi=resolution_dpi)) / height_mm
    origin = Point(cuts_dots[0] / dots_per_mm_x, cuts_dots[3] / dots_per_mm_y)
    return Raster(image, origin, dots_per_mm_x, dots_per_mm_y)


@dataclass(frozen=True, slots=True)
class Dots:
    """A part of a page in grey, 8 bits a dot, 0 is black; rows of `row_bytes` from the top.

    `image` looks at the same memory.
    """

    image: Image.Image
    memory: bytearray
    row_bytes: int


def draw_dots(page: pypdfium2.PdfPage, rect: Rect, *, dots_per_mm: float) -> Dots:
    """Draw the part of a page that lies in `rect`, exactly to scale, its corner on a dot's corner.

    Quicker than `raster_of`, and nothing is stretched; dots beyond the page are white.
    """
    width = math.ceil(rect.width_mm * dots_per_mm - _HAIR)
    height = math.ceil(rect.height_mm * dots_per_mm - _HAIR)
    # PDFium wants rows that begin on whole words.
    row_bytes = -(-width // _WORD_BYTES) * _WORD_BYTES
    memory = bytearray(_WHITE) * (row_bytes * height)
    seen = (ctypes.c_ubyte * len(memory)).from_buffer(memory)
    bitmap = pdfium.FPDFBitmap_CreateEx(width, height, pdfium.FPDFBitmap_Gray, seen, row_bytes)
    scale = dots_per_mm / points_from_mm(1.0)
    left, top = -rect.x_mm * dots_per_mm, -rect.y_mm * dots_per_mm
    matrix = pdfium.FS_MATRIX(scale, 0, 0, scale, left, top)
    clip = pdfium.FS_RECTF(0, 0, width, height)
    pdfium.FPDF_RenderPageBitmapWithMatrix(bitmap, page.raw, matrix, clip, pdfium.FPDF_GRAYSCALE)
    pdfium.FPDFBitmap_Destroy(bitmap)
    image = Image.frombuffer("L", (width, height), memory, "raw", "L", row_bytes, 1)
    return Dots(image, memory, row_bytes)
