"""Faces drawn two ways, and how they differ: whole by WeasyPrint, and as plates."""

from __future__ import annotations

import ctypes
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt
import pypdfium2
import pypdfium2.raw as pdfium

from service.geometry import Rect
from service.units import POINTS_PER_INCH, dots_from_mm, mm_from_points

DPI = 150
_FINER = 3
"""PDFium sets small type to whole dots, so it draws finer first, and the dots are averaged."""
_STEP = 96
"""Grey levels by which a dot must differ to count; less is the edge of the same shape."""

Dots = npt.NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Sign:
    """A sign as an independent reader finds it, its origin in points."""

    text: str
    x_pt: float
    y_pt: float


@dataclass(frozen=True)
class Difference:
    """The dots of one face that differ between two drawings of it."""

    dots: Dots

    def without(self, rects: Sequence[Rect]) -> Difference:
        """Give the difference beside these rectangles of the face."""
        dots = self.dots.copy()
        for rect in rects:
            left, top, right, bottom = _dots_of(rect)
            dots[top:bottom, left:right] = False
        return Difference(dots)

    @property
    def share(self) -> float:
        """Their share of the face."""
        return float(self.dots.mean())

    def share_in(self, rect: Rect) -> float:
        """Their share of a rectangle of the face, which is at least a dot wide."""
        left, top, right, bottom = _dots_of(rect)
        part = self.dots[top : max(top + 1, bottom), left : max(left + 1, right)]
        return float(part.mean()) if part.size else 0.0

    @cached_property
    def largest_blob_mm2(self) -> float:
        """The area of the largest set of such dots that touch."""
        left = {(int(y), int(x)) for y, x in np.argwhere(self.dots)}
        largest = 0
        while left:
            largest = max(largest, _take_blob(left))
        return largest / dots_from_mm(1.0, resolution_dpi=DPI) ** 2


def _dots_of(rect: Rect) -> tuple[int, int, int, int]:
    left, top, right, bottom = (
        round(dots_from_mm(length_mm, resolution_dpi=DPI))
        for length_mm in (rect.x_mm, rect.y_mm, rect.right_mm, rect.bottom_mm)
    )
    return left, top, right, bottom


def _take_blob(left: set[tuple[int, int]]) -> int:
    """Take one blob out of the dots and give how many it has."""
    border, size = [left.pop()], 1
    while border:
        y, x = border.pop()
        around = {(y + down, x + right) for down in (-1, 0, 1) for right in (-1, 0, 1)} & left
        left -= around
        border.extend(around)
        size += len(around)
    return size


def differences(one: bytes, other: bytes) -> Iterator[Difference]:
    """Compare two files page by page."""
    with pypdfium2.PdfDocument(one) as first, pypdfium2.PdfDocument(other) as second:
        assert len(first) == len(second)
        for page, twin in zip(first, second, strict=True):
            a, b = _drawn(page), _drawn(twin)
            assert a.shape == b.shape
            yield Difference(np.abs(a - b) > _STEP)


def signs(pdf: bytes) -> list[list[Sign]]:
    """Read every visible sign of every page, in the order of drawing."""
    with pypdfium2.PdfDocument(pdf) as document:
        return [list(_signs(page)) for page in document]


def signs_in(found: Sequence[Sign], rects: Sequence[Rect], height_mm: float) -> list[Sign]:
    """Give the signs that stand in one of some rectangles of a face so high."""
    return [
        sign
        for sign in found
        if any(
            rect.x_mm - 0.1 <= mm_from_points(sign.x_pt) < rect.right_mm
            and rect.y_mm <= height_mm - mm_from_points(sign.y_pt) < rect.bottom_mm
            for rect in rects
        )
    ]


def farthest_mm(ours: Sequence[Sign], theirs: Sequence[Sign]) -> float:
    """Give how far a sign stands at most from the nearest of the same name in the other drawing."""
    places: dict[str, list[tuple[float, float]]] = {}
    for sign in theirs:
        places.setdefault(sign.text, []).append((sign.x_pt, sign.y_pt))
    apart_pt = 0.0
    for sign in ours:
        here = np.array(places[sign.text]) - (sign.x_pt, sign.y_pt)
        apart_pt = max(apart_pt, float(np.abs(here).max(axis=1).min()))
    return mm_from_points(apart_pt)


def _signs(page: pypdfium2.PdfPage) -> Iterator[Sign]:
    text = page.get_textpage()
    x_pt, y_pt = ctypes.c_double(), ctypes.c_double()
    for index in range(text.count_chars()):
        sign = chr(pdfium.FPDFText_GetUnicode(text, index))
        if sign.isspace() or pdfium.FPDFText_IsGenerated(text, index) == 1:
            continue
        pdfium.FPDFText_GetCharOrigin(text, index, x_pt, y_pt)
        yield Sign(sign, x_pt.value, y_pt.value)


def _drawn(page: pypdfium2.PdfPage) -> npt.NDArray[np.int16]:
    scale = _FINER * DPI / POINTS_PER_INCH
    image = page.render(scale=scale, grayscale=True).to_pil().convert("L")
    return np.asarray(image.reduce(_FINER), dtype=np.int16)
