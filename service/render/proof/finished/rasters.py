"""A coarse look at a finished file by PDFium: each face is inked, and no ink crosses a die line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

import pypdfium2
from PIL import ImageDraw, ImageOps

from service.errors import ProofFailedError
from service.geometry import Rect
from service.render.proof.places import around, at
from service.render.raster import Raster, raster_of
from service.sheets.impose import Sheet
from service.units import mm_from_points

RASTER_DPI = 72
_DOT_MM = 0.5
"""Slack on the coarse raster: a dot and a half."""
_PAGE_MM = 0.01
_INK = 200
_WHITE = 255


def prove_rasters(path: Path, sheets: Sequence[Sheet]) -> int:
    """Prove that another reader inks the first and the last sheet of a file as it should.

    Gives how many sheets were looked at.

    Raises:
        ProofFailedError: With every fault found, each with its sheet and place.
    """
    document = pypdfium2.PdfDocument(path)
    try:
        if len(document) != len(sheets):
            reason = f"the file has {len(document)} pages instead of {len(sheets)} sheets"
            raise ProofFailedError([reason])
        numbers = sorted({0, len(sheets) - 1})
        faults = [
            f"sheet {number + 1}: {fault}"
            for number in numbers
            for fault in _faults(document[number], sheets[number])
        ]
    finally:
        document.close()
    if faults:
        raise ProofFailedError(faults)
    return len(numbers)


def _faults(seen: pypdfium2.PdfPage, sheet: Sheet) -> Iterator[str]:
    page = sheet.stock.page
    width_mm, height_mm = (mm_from_points(side_pt) for side_pt in seen.get_size())
    if max(abs(width_mm - page.width_mm), abs(height_mm - page.height_mm)) > _PAGE_MM:
        yield f"the page is {width_mm:.2f} x {height_mm:.2f} mm large"
    raster = raster_of(seen, resolution_dpi=RASTER_DPI)
    for placement in sheet.placements:
        if _ink_in(raster, _sent(placement.rect, sheet)) is None:
            yield f"nothing is inked on position {placement.position}"
    whole = Rect(0, 0, width_mm, height_mm)
    ink = _ink_in(raster, whole)
    reach = around(sheet.stock.printable_rect(sheet.edges), x_mm=_DOT_MM, y_mm=_DOT_MM)
    if ink is not None and not reach.holds(ink):
        yield f"ink lies beyond the printer's reach: it spans {at(ink)}"
    stray = _ink_in(_without_faces(raster, sheet), whole)
    if stray is not None:
        yield f"ink stands outside every position, {at(stray)}"


def _without_faces(raster: Raster, sheet: Sheet) -> Raster:
    """Whiten every face and mark."""
    image = raster.image.copy()
    pen = ImageDraw.Draw(image)
    for rect in (
        *(placement.rect for placement in sheet.placements),
        *(mark.bounds for mark in sheet.marks),
    ):
        sent = around(_sent(rect, sheet), x_mm=_DOT_MM, y_mm=_DOT_MM)
        pen.rectangle(raster.box_of(sent), fill=_WHITE)
    return Raster(image, raster.origin, raster.dots_per_mm_x, raster.dots_per_mm_y)


def _sent(rect: Rect, sheet: Sheet) -> Rect:
    """Give the rectangle around what is sent to the printer for a rectangle of the sheet."""
    points = sheet.correction.corners(rect)
    xs_mm, ys_mm = [point.x_mm for point in points], [point.y_mm for point in points]
    return Rect(min(xs_mm), min(ys_mm), max(xs_mm) - min(xs_mm), max(ys_mm) - min(ys_mm))


def _ink_in(raster: Raster, rect: Rect) -> Rect | None:
    """Give the box of all ink inside a rectangle."""
    left, top, _, _ = raster.box_of(rect)
    ink = ImageOps.invert(raster.crop(rect)).point([0] * (_WHITE - _INK) + [_WHITE] * (_INK + 1))
    box = ink.getbbox()
    if box is None:
        return None
    x_mm = (left + box[0]) / raster.dots_per_mm_x
    y_mm = (top + box[1]) / raster.dots_per_mm_y
    width_mm = (box[2] - box[0]) / raster.dots_per_mm_x
    return Rect(x_mm, y_mm, width_mm, (box[3] - box[1]) / raster.dots_per_mm_y)
