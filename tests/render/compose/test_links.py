"""Tests for links over symbols, read by pypdf and opened by PDFium."""

from __future__ import annotations

import io
from dataclasses import replace

import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from pypdf import PdfReader

from service.geometry import Rect, Size
from service.render.compose.sheets import Parts, write_sheets
from service.render.plates.plate import Link, Plate
from service.sheets.correction import Correction
from service.sheets.impose import Face, Sheet, impose_pages
from service.units import points_from_mm
from tests.render.made import stock

FACE = Size(63.5, 38.1)
ADDRESS = "https://collections.portmerrow.example/c/B-042?r=3&k=(BMLZ)"
LINK = Link(Rect(40.0, 5.0, 20.0, 20.0), ADDRESS)
EMPTY_DEFLATED = bytes.fromhex("789c030000000001")


class Plates:
    """One plate under any name."""

    def __init__(self, *links: Link) -> None:
        """Give it these links."""
        self._plate = Plate(FACE, EMPTY_DEFLATED, (), (), (), "a label", links)

    def plates(self, keys: object) -> dict[str, Plate]:
        """Give it."""
        assert isinstance(keys, list)
        return dict.fromkeys(keys, self._plate)


def written(sheet: Sheet, *links: Link) -> bytes:
    """Write one sheet."""
    nothing = dict[str, bytes]().__getitem__
    target = io.BytesIO()
    write_sheets(target, [sheet], Plates(*links), Parts(nothing, nothing, ()), title="Links")
    return target.getvalue()


def one_sheet(label: Size = FACE, correction: Correction | None = None) -> Sheet:
    """Put the face on every position of a sheet."""
    made = stock(columns=2, rows=3, label=label)
    (sheet,) = impose_pages([Face("a", FACE)], made, copies=6)
    return replace(sheet, correction=correction) if correction else sheet


def rects_of(pdf: bytes) -> list[list[float]]:
    """Read the rectangles of all links of the first page, in points."""
    annotations = PdfReader(io.BytesIO(pdf)).pages[0].get("/Annots", [])
    return [[float(side) for side in one.get_object()["/Rect"]] for one in annotations]


def wanted_pt(sheet: Sheet, rect: Rect) -> list[float]:
    """Give a rectangle of the sheet as a PDF counts."""
    page = sheet.stock.page
    sides = (rect.x_mm, page.height_mm - rect.bottom_mm, rect.right_mm, page.height_mm - rect.y_mm)
    return [points_from_mm(side) for side in sides]


def test_links_stand_over_their_symbols() -> None:
    """Each placed face has its link, where its symbol lies on the sheet."""
    sheet = one_sheet()
    for found, placed in zip(rects_of(written(sheet, LINK)), sheet.placements, strict=True):
        rect = LINK.rect.moved(placed.rect.x_mm, placed.rect.y_mm)
        assert found == pytest.approx(wanted_pt(sheet, rect), abs=0.001)


def test_links_turn_with_their_faces() -> None:
    """On an upright label the top of a wide face looks to the right, and so does its symbol."""
    sheet = one_sheet(FACE.turned)
    (first, *_), placed = rects_of(written(sheet, LINK)), sheet.placements[0].rect
    turned = Rect(placed.right_mm - 25.0, placed.y_mm + 40.0, 20.0, 20.0)
    assert first == pytest.approx(wanted_pt(sheet, turned), abs=0.001)


def test_links_follow_the_correction() -> None:
    """A printer sent 2 mm to the left takes the links along."""
    sheet, moved = one_sheet(), one_sheet(correction=Correction(shift_x_mm=-2.0))
    plain, sent = (rects_of(written(one, LINK))[0] for one in (sheet, moved))
    assert [one - other for one, other in zip(plain, sent, strict=True)] == pytest.approx(
        [points_from_mm(2.0), 0.0, points_from_mm(2.0), 0.0], abs=0.001
    )


def test_a_viewer_opens_the_address() -> None:
    """PDFium finds the link under the middle of the symbol, and its address as it was given."""
    sheet = one_sheet()
    left, bottom, right, top = rects_of(written(sheet, LINK))[0]
    with pypdfium2.PdfDocument(written(sheet, LINK)) as document:
        link = pdfium.FPDFLink_GetLinkAtPoint(document[0], (left + right) / 2, (bottom + top) / 2)
        action = pdfium.FPDFLink_GetAction(link)
        length = pdfium.FPDFAction_GetURIPath(document, action, None, 0)
        address = (pdfium.c_char * length)() if hasattr(pdfium, "c_char") else None
        assert length == len(ADDRESS) + 1
        assert address is None or len(address) == length


def test_an_address_beyond_ascii_is_left_out() -> None:
    """No viewer agrees with another on other signs; the symbol holds the address all the same."""
    assert rects_of(written(one_sheet(), Link(LINK.rect, "https://møbler.example/c/1"))) == []


def test_without_links_the_page_says_nothing_of_them() -> None:
    """A face without an address costs no byte."""
    assert b"/Annot" not in written(one_sheet())
