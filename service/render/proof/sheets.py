"""The proof of a finished file: every proved face stands where it belongs, and nothing else does.

Counts, exact matrices, and the faces' own bytes are read by pikepdf; one coarse raster a sheet, by
PDFium, shows that each face is really inked and that no ink crosses a die line or the printer's
reach.
"""

from __future__ import annotations

import hashlib
import io
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import pikepdf
import pypdfium2
from pikepdf import Name
from PIL import ImageDraw, ImageOps

from service.errors import ProofFailedError
from service.geometry import Rect, Size
from service.render.compose.matrix import IDENTITY, Matrix, matrix_of, times
from service.render.compose.sheets import DrawnFaces
from service.render.proof.places import around, at
from service.render.raster import Raster, opened, raster_of
from service.render.reading.digests import face_digests, form_digest
from service.sheets.impose import Placement, Sheet
from service.sheets.stock import UNPRINTABLE_EDGE_MM
from service.units import mm_from_points

RASTER_DPI = 72
EXACT_MM = 0.001
_PAGE_MM = 0.01
_DOT_MM = 0.5
"""Slack on the coarse raster: a dot and a half."""
_INK = 200
_WHITE = 255
_TURNED = {0: (1, 0, 0, 1), 90: (0, -1, 1, 0)}


@dataclass(frozen=True, slots=True)
class SheetProof:
    """What was read back without a fault, and the hash of the file."""

    sha256: str
    sheets: int
    placements: int


@dataclass(frozen=True, slots=True)
class _Drawn:
    """A form as it stands on a page."""

    form: pikepdf.Object
    matrix: Matrix

    def rect(self, page: Size) -> Rect:
        """Give the rectangle its box takes on the page, in mm from the top left corner."""
        left, bottom, right, top = (float(value) for value in self.form.BBox.as_list())
        corners = [
            times((1, 0, 0, 1, x_pt, y_pt), self.matrix)[4:]
            for x_pt in (left, right)
            for y_pt in (bottom, top)
        ]
        xs_mm = [mm_from_points(x_pt) for x_pt, _ in corners]
        ys_mm = [page.height_mm - mm_from_points(y_pt) for _, y_pt in corners]
        return Rect(min(xs_mm), min(ys_mm), max(xs_mm) - min(xs_mm), max(ys_mm) - min(ys_mm))


def prove_sheets(
    pdf: bytes,
    sheets: Sequence[Sheet],
    faces: DrawnFaces,
    *,
    edge_mm: float = UNPRINTABLE_EDGE_MM,
) -> SheetProof:
    """Prove that a file is these sheets with these faces on them.

    `edge_mm` is the strip along the page that the printer leaves white.

    Raises:
        ProofFailedError: With every fault found, each with its sheet and place.
    """
    faults = list(_faults(pdf, sheets, faces, edge_mm))
    if faults:
        raise ProofFailedError(faults)
    placements = sum(len(sheet.placements) for sheet in sheets)
    return SheetProof(hashlib.sha256(pdf).hexdigest(), len(sheets), placements)


def _faults(
    pdf: bytes, sheets: Sequence[Sheet], faces: DrawnFaces, edge_mm: float
) -> Iterator[str]:
    digests = dict(zip(faces.keys, face_digests(faces.pdfs), strict=True))
    known: dict[tuple[int, int], bytes] = {}
    with pikepdf.open(io.BytesIO(pdf)) as written, opened(pdf) as shown:
        if len(written.pages) != len(sheets):
            yield f"the file has {len(written.pages)} pages instead of {len(sheets)} sheets"
            return
        for number, sheet in enumerate(sheets):
            page, seen = written.pages[number], shown[number]
            for fault in (
                *_place_faults(page, sheet, digests, known),
                *_ink_faults(seen, sheet, edge_mm=edge_mm),
            ):
                yield f"sheet {number + 1}: {fault}"


def _place_faults(
    page: pikepdf.Page,
    sheet: Sheet,
    digests: Mapping[str, bytes],
    known: dict[tuple[int, int], bytes],
) -> Iterator[str]:
    """Compare the forms of a page, in order, with the placements."""
    drawn = list(_forms_of(page))
    if len(drawn) != len(sheet.placements):
        yield f"{len(drawn)} faces stand on it instead of {len(sheet.placements)}"
        return
    for one, placement in zip(drawn, sheet.placements, strict=True):
        place = one.form.objgen
        if place not in known:
            known[place] = form_digest(one.form)
        if known[place] != digests[placement.key]:
            yield f"position {placement.position} shows another face than {placement.key}"
        yield from _matrix_faults(one, placement, sheet)


def _matrix_faults(one: _Drawn, placement: Placement, sheet: Sheet) -> Iterator[str]:
    here = f"the face {placement.key} on position {placement.position}"
    rect = one.rect(sheet.stock.page)
    if not _is_same(rect, placement.rect):
        yield f"{here} lies {at(rect)} instead of {at(placement.rect)}"
    if one.matrix[:4] != _TURNED.get(placement.turned_deg):
        yield f"{here} is scaled or turned otherwise than by {placement.turned_deg} degrees"
    if not sheet.stock.position_rect(placement.position).holds(rect, tolerance_mm=EXACT_MM):
        yield f"{here} leaves its die line"


def _is_same(one: Rect, other: Rect) -> bool:
    return one.holds(other, tolerance_mm=EXACT_MM) and other.holds(one, tolerance_mm=EXACT_MM)


def _forms_of(page: pikepdf.Page) -> Iterator[_Drawn]:
    """Follow the matrices of a page to each form it draws."""
    matrix, saved = IDENTITY, [IDENTITY]
    for instruction in pikepdf.parse_content_stream(page, "q Q cm Do"):
        match str(instruction.operator):
            case "q":
                saved.append(matrix)
            case "Q":
                matrix = saved.pop()
            case "cm":
                matrix = times(matrix_of(list(instruction.operands)), matrix)
            case _:
                form = page.obj.Resources.XObject[Name(str(instruction.operands[0]))]
                yield _Drawn(form, matrix)


def _ink_faults(seen: pypdfium2.PdfPage, sheet: Sheet, *, edge_mm: float) -> Iterator[str]:
    """Look at a coarse raster of the sheet."""
    page = sheet.stock.page
    width_mm, height_mm = (mm_from_points(side_pt) for side_pt in seen.get_size())
    if max(abs(width_mm - page.width_mm), abs(height_mm - page.height_mm)) > _PAGE_MM:
        yield f"the page is {width_mm:.2f} x {height_mm:.2f} mm large"
    raster = raster_of(seen, resolution_dpi=RASTER_DPI)
    for placement in sheet.placements:
        if _ink_in(raster, placement.rect) is None:
            yield f"nothing is inked on position {placement.position}"
    whole = Rect(0, 0, width_mm, height_mm)
    ink = _ink_in(raster, whole)
    reach = around(sheet.stock.printable_rect(edge_mm=edge_mm), x_mm=_DOT_MM, y_mm=_DOT_MM)
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
        pen.rectangle(raster.box_of(around(rect, x_mm=_DOT_MM, y_mm=_DOT_MM)), fill=_WHITE)
    return Raster(image, raster.origin, raster.dots_per_mm_x, raster.dots_per_mm_y)


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
