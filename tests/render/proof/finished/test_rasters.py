from __future__ import annotations

import io
import zlib
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

import pikepdf
import pytest
from pikepdf import Array, Name

from service.errors import ProofFailedError
from service.render.proof.finished.rasters import prove_rasters
from service.sheets.correction import Correction
from service.sheets.impose import Face, Sheet, impose_pages
from tests.render.proof.finished.made_file import FACE, composed, first_of, plate, stock

PLATES = {"a1": plate("B-042", tone=120), "b2": plate("B-043")}
SHEETS = impose_pages([Face(key, FACE) for key in ("a1", "b2", "a1", "b2", "a1")], stock())
SENT = tuple(replace(sheet, correction=Correction(shift_x_mm=3.0)) for sheet in SHEETS)


def faults_of(path: Path, sheets: Sequence[Sheet] = SHEETS) -> str:
    """Give the faults found as one text."""
    try:
        prove_rasters(path, sheets)
    except ProofFailedError as error:
        return " ".join(error.faults)
    return ""


def with_page(path: Path, number: int, change: Callable[[pikepdf.Page], object]) -> Path:
    """Change one page of the file."""
    with pikepdf.open(io.BytesIO(path.read_bytes())) as pdf:
        change(pdf.pages[number])
        pdf.save(path)
    return path


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Compose the sheets as they should be."""
    return composed(tmp_path / "sheets.pdf", SHEETS, PLATES)


def test_the_first_and_the_last_sheet_are_looked_at(path: Path, tmp_path: Path) -> None:
    """Two sheets of three are drawn, or the only one."""
    assert prove_rasters(path, SHEETS) == 2
    one = composed(tmp_path / "one.pdf", SHEETS[:1], PLATES)
    assert prove_rasters(one, SHEETS[:1]) == 1


def test_corrected_sheets_are_looked_at_where_they_are_sent(tmp_path: Path) -> None:
    """Ink sent 3 mm to the right for a printer's sake stands where it should."""
    path = composed(tmp_path / "sheets.pdf", SENT, PLATES)
    assert faults_of(path, SENT) == ""
    assert "outside every position" in faults_of(path, moved_back(SENT))


def moved_back(sheets: Sequence[Sheet]) -> list[Sheet]:
    """Take the other way for right."""
    return [replace(sheet, correction=Correction(shift_x_mm=-20.0)) for sheet in sheets]


def _emptied(page: pikepdf.Page) -> None:
    first_of(page).write(zlib.compress(b"0 g"), filter=Name.FlateDecode)


def _stray(page: pikepdf.Page) -> None:
    page.obj.Contents.write(page.obj.Contents.read_bytes() + b" 300 20 40 40 re f")


def _at_the_edge(page: pikepdf.Page) -> None:
    page.obj.Contents.write(page.obj.Contents.read_bytes() + b" 2 400 4 40 re f")


def _letter(page: pikepdf.Page) -> None:
    page.obj.MediaBox = Array([0, 0, 612, 792])


@pytest.mark.parametrize("number", [0, 2], ids=["first", "last"])
@pytest.mark.parametrize(
    ("change", "fault"),
    [
        (_emptied, "nothing is inked on position 1"),
        (_stray, "ink stands outside every position"),
        (_at_the_edge, "beyond the printer's reach"),
        (_letter, "the page is 215.90 x 279.40 mm large"),
    ],
)
def test_what_can_be_seen_is_caught(
    path: Path, number: int, change: Callable[[pikepdf.Page], object], fault: str
) -> None:
    """An empty face, stray ink, ink at the edge and another page come to light."""
    found = faults_of(with_page(path, number, change))
    assert f"sheet {number + 1}: " in found
    assert fault in found


def test_a_missing_sheet_is_caught(path: Path) -> None:
    """The file has one page for each sheet."""
    assert "3 pages instead of 2 sheets" in faults_of(path, SHEETS[:2])
