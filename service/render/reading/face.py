"""What an independent reader finds on a face: characters, pictures, and how far ink reaches.

Read by PDFium from the finished file, in mm from the top left corner; nothing here knows what was
meant to be printed.
"""

from __future__ import annotations

import ctypes
from collections.abc import Iterator
from dataclasses import dataclass

import pypdfium2
import pypdfium2.raw as pdfium

from service.geometry import Point, Rect, Size
from service.units import mm_from_points

_Bounds = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Character:
    """A character as the file names it, the origin of its glyph on the baseline, and its ink."""

    text: str
    origin: Point
    ink: Rect


@dataclass(frozen=True, slots=True)
class ReadFace:
    """Everything read from one face, in the order of drawing."""

    size: Size
    characters: tuple[Character, ...]
    pictures: tuple[Rect, ...]
    extents: tuple[Rect, ...]
    """Bounds of every text, path and picture, before clipping."""


def read_face(page: pypdfium2.PdfPage) -> ReadFace:
    """Read a page of an open document."""
    width_mm, height_mm = (mm_from_points(side_pt) for side_pt in page.get_size())
    objects = [(part.type, _rect(part.get_bounds(), height_mm)) for part in page.get_objects()]
    return ReadFace(
        Size(width_mm, height_mm),
        tuple(_characters(page, height_mm)),
        tuple(rect for kind, rect in objects if kind == pdfium.FPDF_PAGEOBJ_IMAGE),
        tuple(rect for _, rect in objects),
    )


def _characters(page: pypdfium2.PdfPage, height_mm: float) -> Iterator[Character]:
    text_page = page.get_textpage()
    x_pt, y_pt = ctypes.c_double(), ctypes.c_double()
    for index in range(text_page.count_chars()):
        # PDFium adds blanks and line ends of its own where it finds gaps.
        if pdfium.FPDFText_IsGenerated(text_page, index) == 1:
            continue
        pdfium.FPDFText_GetCharOrigin(text_page, index, x_pt, y_pt)
        origin = Point(mm_from_points(x_pt.value), height_mm - mm_from_points(y_pt.value))
        character = chr(pdfium.FPDFText_GetUnicode(text_page, index))
        yield Character(character, origin, _rect(text_page.get_charbox(index), height_mm))
    text_page.close()


def _rect(bounds_pt: _Bounds, height_mm: float) -> Rect:
    left, bottom, right, top = (mm_from_points(value_pt) for value_pt in bounds_pt)
    return Rect(left, height_mm - top, right - left, top - bottom)
