"""The proof of a finished file: it is these sheets with these plates on them, and nothing else.

Pages, places, instructions, pictures and fonts are read by a reader of our own, written apart from
the composer; what it does not know is a fault.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple, Protocol

from service.errors import ProofFailedError
from service.geometry import Insets, Point, Rect, Size
from service.render.plates.plate import Link, ProvedPlate
from service.render.proof.finished.drawing import Drawing, read_drawing
from service.render.proof.finished.forms import Forms, Parts
from service.render.proof.finished.links import link_faults
from service.render.proof.finished.outlines import outline_faults
from service.render.proof.finished.places import EXACT_MM, Places
from service.render.reading.objects import Dictionary, Ref, Value
from service.render.reading.pdf_file import PdfFile, opened_file
from service.sheets.correction import Correction
from service.sheets.impose import Sheet
from service.sheets.marks import MARK_WIDTH_MM
from service.sheets.stock import Stock
from service.units import mm_from_points, points_from_mm

_SHEETS_AT_ONCE = 16
"""The plates of so many sheets are held at a time."""
_PAGE_MM = 0.01
_EXACT_PT = points_from_mm(EXACT_MM)
_PAGE_SAYS = {"/Type", "/Parent", "/MediaBox", "/Resources", "/Contents"}
_PAGE_SAYS |= {"/StructParents", "/Tabs", "/Annots"}
_ACTS = ("/OpenAction", "/AA", "/AcroForm", "/Names", "/OCProperties")


class ProvedSource(Protocol):
    """Where proved plates are found again, a few sheets' worth at a time."""

    def proved(self, keys: Sequence[str]) -> Mapping[str, ProvedPlate]:
        """Give the plates of all these keys."""
        ...


@dataclass(frozen=True, slots=True)
class FileProof:
    """What was read back without a fault."""

    sheets: int
    placements: int
    plates: int


def prove_file(
    path: Path, sheets: Iterable[Sheet], plates: ProvedSource, parts: Parts
) -> FileProof:
    """Prove that a file is these sheets with these plates on them.

    Raises:
        ProofFailedError: With every fault found, each with its sheet and place.
    """
    wanted = list(sheets)
    faults = list(_faults(path, wanted, plates, parts))
    if faults:
        raise ProofFailedError(faults)
    placements = [placement.key for sheet in wanted for placement in sheet.placements]
    return FileProof(len(wanted), len(placements), len(set(placements)))


def _faults(
    path: Path, sheets: Sequence[Sheet], plates: ProvedSource, parts: Parts
) -> Iterator[str]:
    try:
        with opened_file(path) as file:
            pages = list(file.pages())
            if len(pages) != len(sheets):
                yield f"the file has {len(pages)} pages instead of {len(sheets)} sheets"
                return
            prover = _Prover(file, parts)
            yield from prover.acting_faults()
            for start in range(0, len(sheets), _SHEETS_AT_ONCE):
                some = sheets[start : start + _SHEETS_AT_ONCE]
                proved = plates.proved(prover.new_keys(some))
                for number, sheet in enumerate(some, start):
                    faults = prover.faults(pages[number], sheet, proved)
                    yield from _told(f"sheet {number + 1}", faults)
            yield from _told("the file", prover.font_faults())
    except ValueError as error:
        yield f"the file cannot be read back: {error}"


def _told(where: str, faults: Iterator[str]) -> Iterator[str]:
    """Say where faults are; what cannot be read is one of them."""
    try:
        for fault in faults:
            yield f"{where}: {fault}"
    except ValueError as error:
        yield f"{where}: {error}"


class _Known(NamedTuple):
    """A plate that was found in the file: its form, size and ink."""

    form: Value
    size: Size
    ink: Rect
    links: tuple[Link, ...]


class _Prover:
    """Proves one sheet after another; each plate is looked at where it is first met."""

    def __init__(self, file: PdfFile, parts: Parts) -> None:
        """Keep what all sheets share."""
        self._file = file
        self._fonts = parts.fonts
        self._forms = Forms(file, parts)
        self._known: dict[str, _Known] = {}
        self._places: dict[tuple[Stock, Correction, Insets | None], Places] = {}

    def new_keys(self, sheets: Iterable[Sheet]) -> list[str]:
        """Give the plates of these sheets that were not met before, each once."""
        keys = (placement.key for sheet in sheets for placement in sheet.placements)
        return [key for key in dict.fromkeys(keys) if key not in self._known]

    def acting_faults(self) -> Iterator[str]:
        """Say whether opening the file sets off anything."""
        root = self._file.dictionary(self._file.trailer.get("/Root"))
        yield from (f"the file does something by itself: {act}" for act in _ACTS if act in root)

    def faults(
        self, page: Dictionary, sheet: Sheet, proved: Mapping[str, ProvedPlate]
    ) -> Iterator[str]:
        """Say everything wrong with a sheet."""
        yield from _page_faults(page, sheet.stock.page)
        drawing = read_drawing(self._file.stream(page.get("/Contents")).content)
        if len(drawing.faces) != len(sheet.placements):
            yield f"{len(drawing.faces)} faces stand on it instead of {len(sheet.placements)}"
            return
        resources = self._file.dictionary(page.get("/Resources"))
        forms = self._file.dictionary(resources.get("/XObject"))
        places = self._places_of(sheet)
        for (name, matrix), placement in zip(drawing.faces, sheet.placements, strict=True):
            form, known = forms.get(name), self._known.get(placement.key)
            if known is None or known.form != form:
                for fault in self._meet(form, placement.key, proved):
                    place = f"position {placement.position}"
                    yield f"{place} shows another face than {placement.key}: {fault}"
                known = self._known[placement.key]
            yield from places.faults(matrix, placement, known.size, known.ink)
        yield from _mark_faults(drawing, sheet)
        plates = [(placement, self._known[placement.key].links) for placement in sheet.placements]
        yield from link_faults(self._file, page.get("/Annots", []), sheet, plates)

    def font_faults(self) -> Iterator[str]:
        """Say which glyphs of all plates looked at are not in the file as they are shipped."""
        for number, font, glyphs in self._forms.glyphs():
            yield from outline_faults(self._file, number, self._fonts[font][1], glyphs)

    def _meet(self, form: Value, key: str, proved: Mapping[str, ProvedPlate]) -> Iterator[str]:
        """Look at the form that stands for a plate, if it is the first."""
        if key in self._known:
            yield "it is drawn by another form than before"
            return
        plate = proved[key]
        self._known[key] = _Known(form, plate.plate.size, plate.proof.ink, plate.plate.links)
        if isinstance(form, Ref):
            yield from self._forms.faults(form.number, plate)
        else:
            yield "none"

    def _places_of(self, sheet: Sheet) -> Places:
        kind = (sheet.stock, sheet.correction, sheet.edges)
        if kind not in self._places:
            self._places[kind] = Places(*kind)
        return self._places[kind]


def _page_faults(page: Dictionary, size: Size) -> Iterator[str]:
    if not page.keys() <= _PAGE_SAYS:
        yield f"the page says more than it should: {' '.join(sorted(page.keys() - _PAGE_SAYS))}"
    match page.get("/MediaBox"):
        case [0.0, 0.0, float(width_pt), float(height_pt)]:
            width_mm, height_mm = mm_from_points(width_pt), mm_from_points(height_pt)
            off_mm = max(abs(width_mm - size.width_mm), abs(height_mm - size.height_mm))
            if off_mm > _PAGE_MM:
                yield f"the page is {width_mm:.2f} x {height_mm:.2f} mm large"
        case box:
            yield f"the page has the box {box!r:.60}"


def _mark_faults(drawing: Drawing, sheet: Sheet) -> Iterator[str]:
    """Compare the lines of a page with the marks, in order."""
    if len(drawing.lines) != len(sheet.marks):
        yield f"{len(drawing.lines)} lines stand on it instead of {len(sheet.marks)} cut marks"
        return
    if drawing.width_pt > points_from_mm(MARK_WIDTH_MM) + _EXACT_PT:
        yield f"a cut mark is {mm_from_points(drawing.width_pt):.2f} mm wide"
    for line, mark in zip(drawing.lines, sheet.marks, strict=True):
        wanted = (*_sent_pt(mark.start, sheet), *_sent_pt(mark.end, sheet))
        if any(abs(one - other) > _EXACT_PT for one, other in zip(line, wanted, strict=True)):
            yield (
                f"a cut mark stands elsewhere than {mark.start.x_mm:.1f} mm from the left"
                f" and {mark.start.y_mm:.1f} mm from the top"
            )


def _sent_pt(point: Point, sheet: Sheet) -> tuple[float, float]:
    """Give where a point of the sheet is sent, in points of the page."""
    sent = sheet.correction.moved(point)
    return points_from_mm(sent.x_mm), points_from_mm(sheet.stock.page.height_mm - sent.y_mm)
