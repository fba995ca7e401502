"""Positions read from the finished file by pypdf, and measured on a raster of PDFium.

Neither takes part in making the file. A PDF counts in points of 1/72 inch from the bottom left
corner, and a form is placed by the matrix in force when it is drawn (ISO 32000-1, 8.3 and 8.10).
"""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import pypdfium2
import pytest
from pypdf import PageObject, PdfReader
from pypdf.generic import ArrayObject, ContentStream, DictionaryObject

from service.geometry import Rect, Size
from service.pages.page import Shade, ShapeBlock
from service.render.compose.sheets import Parts, write_sheets
from service.render.frames.frame import Frame, Mould, ShapeLook
from service.render.plates.make import make_plate
from service.render.plates.plate import Plate
from service.sheets.impose import Face, Placement, Sheet, impose_pages
from service.sheets.stock import Stock
from tests.render.made import page, stock
from tests.render.plates.fake_setter import FakeSetter

pytestmark = [pytest.mark.print, pytest.mark.slow]

MM = 72 / 25.4
DPI = 600
FACE = Size(63.5, 38.1)
# The mark lies towards the face's top left corner, so that a turn shows.
MARK = Rect(3.0, 4.0, 5.0, 5.0)

GRID = replace(
    stock(label=FACE),
    columns=3,
    rows=7,
    left_mm=7.21,
    top_mm=15.15,
    pitch_x_mm=66.04,
    pitch_y_mm=38.1,
)
STOCKS = {
    "three by seven labels": GRID,
    "turned into upright labels": stock(columns=4, rows=3, label=FACE.turned),
    "centred in larger labels": stock(columns=2, rows=5, label=Size(80.0, 45.3)),
}


class OnePlate:
    """A face that is white but for a black square."""

    def plates(self, keys: Sequence[str]) -> dict[str, Plate]:
        """Give it under any name."""
        black = Mould((0.0, 0.0, 0.0))
        frame = Frame("lid-card", "", {ShapeLook("mark", "black", False, False): black}, {})  # noqa: FBT003
        face = page(ShapeBlock("mark", MARK, fill=Shade.BLACK), size=FACE)
        return dict.fromkeys(keys, make_plate(face, frame, {}, FakeSetter()))


def composed(sheet: Sheet) -> bytes:
    """Write a file of one sheet."""
    nothing = dict[str, bytes]().__getitem__
    target = io.BytesIO()
    write_sheets(target, [sheet], OnePlate(), Parts(nothing, nothing, ()), title="Positions")
    return target.getvalue()


@pytest.fixture(params=STOCKS)
def sheet(request: pytest.FixtureRequest) -> Sheet:
    """Fill one sheet of each stock."""
    made: Stock = STOCKS[str(request.param)]
    (one,) = impose_pages([Face("B-042/1", FACE)], made, copies=made.positions)
    return one


def read_rects(pdf: bytes) -> list[Rect]:
    """Read, with pypdf, where each form of the first page lies, in mm from the top left corner."""
    reader = PdfReader(io.BytesIO(pdf))
    sheet = reader.pages[0]
    height_mm = float(sheet.mediabox.height) / MM
    form_boxes = boxes_of(sheet)
    rects, matrix = [], np.identity(3)
    saved: list[np.ndarray[tuple[int, int], np.dtype[np.float64]]] = []
    for operands, operator in ContentStream(sheet.get_contents(), reader).operations:
        if operator == b"q":
            saved.append(matrix)
        elif operator == b"Q":
            matrix = saved.pop()
        elif operator == b"cm":
            a, b, c, d, e, f = (float(value) for value in operands)
            matrix = np.array([[a, b, 0], [c, d, 0], [e, f, 1]]) @ matrix
        elif operator == b"Do":
            left, bottom, right, top = form_boxes[str(operands[0])]
            corners = np.array([[left, bottom, 1], [right, top, 1]]) @ matrix / MM
            (x0, y0), (x1, y1) = corners.min(0)[:2], corners.max(0)[:2]
            rects.append(Rect(x0, height_mm - y1, x1 - x0, y1 - y0))
    return rects


def boxes_of(sheet: PageObject) -> dict[str, list[float]]:
    """Give the box of each form by its name."""
    resources = sheet["/Resources"]
    assert isinstance(resources, DictionaryObject)
    forms = resources["/XObject"]
    assert isinstance(forms, DictionaryObject)
    boxes = {}
    for name in forms:
        form = forms[name]
        assert isinstance(form, DictionaryObject)
        box = form["/BBox"]
        assert isinstance(box, ArrayObject)
        boxes[str(name)] = [float(value) for value in box]
    return boxes


def mark_on(placement: Placement) -> Rect:
    """Tell where the square should be: turned clockwise, the face's top looks right."""
    rect = placement.rect
    if placement.turned_deg == 0:
        return MARK.moved(rect.x_mm, rect.y_mm)
    return Rect(rect.right_mm - MARK.bottom_mm, rect.y_mm + MARK.x_mm, *_turned(MARK))


def _turned(rect: Rect) -> tuple[float, float]:
    return rect.height_mm, rect.width_mm


def edges_mm(tones: Sequence[float], *, start_dots: int) -> tuple[float, float]:
    """Measure where a dark run begins and ends on a line of dots; grey ones count by share."""
    dark = 1 - np.asarray(tones, dtype=float) / 255
    full = np.flatnonzero(dark > 0.999)
    first, last = int(full[0]), int(full[-1])
    begin = start_dots + first - float(dark[:first].sum())
    end = start_dots + last + 1 + float(dark[last + 1 :].sum())
    return begin / DPI * 25.4, end / DPI * 25.4


def test_matrices_are_right_to_a_hundredth(sheet: Sheet) -> None:
    """Every face lies within 0.01 mm of its rectangle; in truth within 0.001 mm."""
    found = read_rects(composed(sheet))
    wanted = [placement.rect for placement in sheet.placements]
    assert len(found) == len(wanted) == sheet.stock.positions
    for one, other in zip(found, wanted, strict=True):
        sides = (one.x_mm, one.y_mm, one.right_mm, one.bottom_mm)
        assert sides == pytest.approx(
            (other.x_mm, other.y_mm, other.right_mm, other.bottom_mm), abs=0.001
        )


def test_the_page_is_the_sheet(sheet: Sheet) -> None:
    """A4 is 210 x 297 mm (ISO 216) to a thousandth."""
    reader = PdfReader(io.BytesIO(composed(sheet)))
    box = reader.pages[0].mediabox
    size_mm = (float(box.width) / MM, float(box.height) / MM)
    assert size_mm == pytest.approx((210.0, 297.0), abs=0.001)


def test_ink_is_right_to_a_twentieth(sheet: Sheet) -> None:
    """At 600 dpi each edge of each square is found within 0.05 mm of where it should be."""
    with pypdfium2.PdfDocument(composed(sheet)) as pdf:
        size_pt = pdf[0].get_size()
        dots = pdf[0].render(scale=DPI / 72, grayscale=True).to_numpy().squeeze()
    # PDFium stretches the page to whole dots; undone here, it would feign 0.04 mm.
    stretch_x, stretch_y = (
        count / (side_pt / 72 * DPI)
        for count, side_pt in zip(dots.shape[::-1], size_pt, strict=True)
    )
    for placement in sheet.placements:
        wanted = mark_on(placement)
        x, y, right, bottom = (
            round(side_mm / 25.4 * DPI)
            for side_mm in (wanted.x_mm, wanted.y_mm, wanted.right_mm, wanted.bottom_mm)
        )
        row, column = dots[(y + bottom) // 2], dots[:, (x + right) // 2]
        left_mm, right_mm = edges_mm(row[x - 20 : right + 20], start_dots=x - 20)
        top_mm, bottom_mm = edges_mm(column[y - 20 : bottom + 20], start_dots=y - 20)
        assert (left_mm / stretch_x, right_mm / stretch_x) == pytest.approx(
            (wanted.x_mm, wanted.right_mm), abs=0.05
        )
        assert (top_mm / stretch_y, bottom_mm / stretch_y) == pytest.approx(
            (wanted.y_mm, wanted.bottom_mm), abs=0.05
        )
