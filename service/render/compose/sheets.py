"""Plates on sheets: the finished PDF, written as it is made.

Every plate is drawn once and placed by an exact matrix, however often it is printed. The same
plates on the same sheets give the same bytes.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import islice
from pathlib import Path
from typing import BinaryIO, Protocol

from service.geometry import Rect, Size
from service.render.compose.document import Document
from service.render.compose.fonts import FontBook
from service.render.compose.forms import FormBook, MarkSource
from service.render.compose.links import write_links
from service.render.compose.literals import text_literal
from service.render.compose.pictures import PictureBook, PictureSource
from service.render.compose.place import (
    box_pt,
    corrected_rect,
    correction_matrix,
    placed_matrix,
    stroke,
    written,
)
from service.render.compose.structure import Box, TagTree
from service.render.matrix import times
from service.render.plates.plate import Link, Plate
from service.sheets.correction import Correction
from service.sheets.impose import Placement, Sheet
from service.sheets.marks import MARK_WIDTH_MM, CutMark
from service.units import points_from_mm

_SHEETS_TOGETHER = 8
"""Sheets whose plates are asked for at once, and held in memory until they are written."""


class PlateSource(Protocol):
    """Where plates come from, a few at a time."""

    def plates(self, keys: Sequence[str]) -> Mapping[str, Plate]:
        """Give plates by their keys, all that are asked for."""
        ...


@dataclass(frozen=True, slots=True)
class Parts:
    """What plates only name: pictures, marks, and name and file of each shipped font in order."""

    pictures: PictureSource
    marks: MarkSource
    fonts: Sequence[tuple[str, Path]]


def write_sheets(  # noqa: PLR0913 - what goes in, and two things named.
    target: BinaryIO,
    sheets: Iterable[Sheet],
    plates: PlateSource,
    parts: Parts,
    *,
    title: str,
    tagged: bool = True,
) -> None:
    """Put plates on sheets and write the PDF, one page a sheet.

    Raises:
        KeyError: A placement names a plate that is not there.
        PictureError: A picture is no JPEG that a PDF shows as it is.
    """
    printing = _Printing(target, parts, plates, tagged=tagged)
    rest = iter(sheets)
    while together := list(islice(rest, _SHEETS_TOGETHER)):
        printing.add(together)
    printing.close(title=title)


def write_faces(
    target: BinaryIO, plates: Sequence[Plate], parts: Parts, *, title: str = ""
) -> None:
    """Write plates as they are, each on a page of its own size.

    Raises:
        PictureError: A picture is no JPEG that a PDF shows as it is.
    """
    document = Document(target)
    fonts = FontBook(document.writer, parts.fonts)
    forms = _forms(document, fonts, parts)
    for plate in plates:
        document.begin_page()
        number = forms.add(plate)
        document.write_page(plate.size, b"/X%d Do" % number, [number])
    fonts.write()
    document.close(title=title)


def _forms(document: Document, fonts: FontBook, parts: Parts) -> FormBook:
    pictures = PictureBook(document.writer, parts.pictures)
    return FormBook(document.writer, fonts, pictures, parts.marks)


class _Printing:
    """A file whose sheets are being written."""

    def __init__(
        self, target: BinaryIO, parts: Parts, plates: PlateSource, *, tagged: bool
    ) -> None:
        self._document = Document(target)
        self._fonts = FontBook(self._document.writer, parts.fonts)
        self._forms = _forms(self._document, self._fonts, parts)
        self._plates = plates
        self._tags = TagTree(self._document.writer) if tagged else None
        self._drawn: dict[str, tuple[int, bytes]] = {}
        self._links: dict[str, tuple[Link, ...]] = {}

    def add(self, sheets: Sequence[Sheet]) -> None:
        """Write some sheets, and before them the plates on them that are new."""
        keys = dict.fromkeys(placed.key for sheet in sheets for placed in sheet.placements)
        new = [key for key in keys if key not in self._drawn]
        plates = self._plates.plates(new) if new else {}
        for key in new:
            alt = text_literal(plates[key].alt) if self._tags else b""
            self._drawn[key] = (self._forms.add(plates[key]), alt)
            if plates[key].links:
                self._links[key] = plates[key].links
        for sheet in sheets:
            self._add_sheet(sheet)

    def close(self, *, title: str) -> None:
        """Finish the file."""
        self._fonts.write()
        self._document.close(title=title, entries=self._tags.write() if self._tags else b"")

    def _add_sheet(self, sheet: Sheet) -> None:
        drawn = [self._drawn[placement.key] for placement in sheet.placements]
        places = [_place_of(placement, sheet) for placement in sheet.placements]
        number, entries = self._document.begin_page(), b""
        if self._tags:
            figures = [(box, alt) for (_, box), (_, alt) in zip(places, drawn, strict=True)]
            entries = self._tags.add_page(number, figures)
        if self._links:
            entries += write_links(self._document.writer, sheet, self._links)
        forms = [form for form, _ in drawn]
        content = _content(sheet, forms, [matrix for matrix, _ in places], tagged=bool(self._tags))
        self._document.write_page(sheet.stock.page, content, dict.fromkeys(forms), entries=entries)


def _content(
    sheet: Sheet, forms: Sequence[int], matrices: Sequence[bytes], *, tagged: bool
) -> bytes:
    """Write the page: each face in marked content of its own, then the cut marks."""
    lines = [
        b"q %b cm /X%d Do Q" % (matrix, form) for matrix, form in zip(matrices, forms, strict=True)
    ]
    if tagged:
        lines = [b"/Figure<</MCID %d>>BDC\n%b\nEMC" % pair for pair in enumerate(lines)]
    if sheet.marks:
        lines.append(_cut_marks(sheet.marks, sheet.stock.page, sheet.correction))
    return b"\n".join(lines)


# Sheets of one stock are alike: most marks and places come again on the next sheet.
@lru_cache(maxsize=16)
def _cut_marks(marks: tuple[CutMark, ...], page: Size, correction: Correction) -> bytes:
    moved = correction.moved
    strokes = "\n".join(stroke(moved(mark.start), moved(mark.end), page=page) for mark in marks)
    width = written([points_from_mm(MARK_WIDTH_MM)])
    return f"/Artifact BMC\nq {width} w 0 G\n{strokes}\nS Q\nEMC".encode("ascii")


def _place_of(placement: Placement, sheet: Sheet) -> tuple[bytes, Box]:
    return _place(placement.rect, placement.turned_deg, sheet.stock.page, sheet.correction)


@lru_cache(maxsize=1024)
def _place(rect: Rect, turned_deg: int, page: Size, correction: Correction) -> tuple[bytes, Box]:
    """Give the matrix that takes a face to its place, as written, and the box it then fills."""
    matrix = times(
        placed_matrix(rect, page=page, turned_deg=turned_deg),
        correction_matrix(correction, page=page),
    )
    box = box_pt(corrected_rect(rect, correction), page=page)
    return (written(matrix).encode("ascii"), box)
