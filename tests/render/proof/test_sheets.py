from __future__ import annotations

import hashlib
import io
from collections.abc import Callable, Sequence
from dataclasses import replace

import pikepdf
import pytest

from service.errors import ProofFailedError
from service.geometry import Rect
from service.pages.page import Shade, ShapeBlock
from service.render.compose.sheets import DrawnFaces, compose_sheets
from service.render.proof.sheets import prove_sheets
from service.sheets.impose import Face, Sheet, impose_pages
from tests.render.made import FACE, Ink, page, photo, stock, text

pytestmark = [pytest.mark.print, pytest.mark.slow]

KEYS = ("B-042/1", "B-043/1", "B-044/1")
SHEETS = impose_pages([Face(key, FACE) for key in KEYS], stock())
TURNED = impose_pages(
    [Face(key, FACE) for key in KEYS], stock(columns=2, rows=1, label=FACE.turned)
)


@pytest.fixture(scope="module")
def faces(ink: Ink) -> DrawnFaces:
    """Draw three faces in two files."""
    first = ink.of(page(text("B-042"), photo()), page(text("B-043")))
    return DrawnFaces((first, ink.of(page(text("B-044")))), KEYS, KEYS)


def faults_of(pdf: bytes, sheets: Sequence[Sheet], faces: DrawnFaces) -> str:
    """Give the faults the proof finds as one text."""
    try:
        prove_sheets(pdf, sheets, faces)
    except ProofFailedError as error:
        return " ".join(error.faults)
    return ""


def composed(faces: DrawnFaces, sheets: Sequence[Sheet]) -> bytes:
    """Compose with some title."""
    return compose_sheets(faces, sheets, title="Lid cards")


def moved(sheets: Sequence[Sheet], number: int, dx_mm: float) -> tuple[Sheet, ...]:
    """Move one face of the first sheet to the right."""
    first, *rest = sheets
    placements = list(first.placements)
    placements[number] = replace(placements[number], rect=placements[number].rect.moved(dx_mm, 0.0))
    return (replace(first, placements=tuple(placements)), *rest)


def rewritten(pdf: bytes, change: Callable[[bytes], bytes]) -> bytes:
    """Change the instructions of the first sheet."""
    with pikepdf.open(io.BytesIO(pdf)) as opened:
        contents = opened.pages[0].obj.Contents
        contents.write(change(contents.read_bytes()))
        data = io.BytesIO()
        opened.save(data)
    return data.getvalue()


@pytest.mark.parametrize("sheets", [SHEETS, TURNED], ids=["upright", "turned"])
def test_sheets_as_they_should_be_are_proved(faces: DrawnFaces, sheets: tuple[Sheet, ...]) -> None:
    """The proof counts sheets and placements and keeps the hash of the file."""
    pdf = composed(faces, sheets)
    proof = prove_sheets(pdf, sheets, faces)
    assert (proof.sheets, proof.placements) == (2, 3)
    assert proof.sha256 == hashlib.sha256(pdf).hexdigest()


@pytest.mark.parametrize("dx_mm", [0.01, -0.01, 5.0])
def test_a_moved_face_is_caught(faces: DrawnFaces, dx_mm: float) -> None:
    """A hundredth of a millimetre is enough, either way."""
    faults = faults_of(composed(faces, moved(SHEETS, 1, dx_mm)), SHEETS, faces)
    assert "the face B-043/1 on position 2 lies at" in faults


def test_a_face_off_its_die_line_is_caught(faces: DrawnFaces) -> None:
    """Even where sheet and file agree, a face must stay inside its position."""
    wrong = moved(SHEETS, 0, 0.5)
    assert "leaves its die line" in faults_of(composed(faces, wrong), wrong, faces)


def test_exchanged_faces_are_caught(faces: DrawnFaces) -> None:
    """The right number of faces in the wrong positions is not the right sheet."""
    first = SHEETS[0]
    one, two = first.placements
    swapped = replace(first, placements=(replace(one, key=two.key), replace(two, key=one.key)))
    faults = faults_of(composed(faces, (swapped, SHEETS[1])), SHEETS, faces)
    assert "position 1 shows another face than B-042/1" in faults


def test_other_ink_than_was_proved_is_caught(ink: Ink, faces: DrawnFaces) -> None:
    """A face drawn anew with one word changed is not the face that was proved."""
    other = ink.of(page(text("B-042"), photo()), page(text("B-048")))
    changed = replace(faces, pdfs=(other, faces.pdfs[1]))
    faults = faults_of(composed(changed, SHEETS), SHEETS, faces)
    assert "position 2 shows another face than B-043/1" in faults


@pytest.mark.parametrize(
    ("change", "fault"),
    [
        pytest.param(lambda told: told.split(b"EMC")[0] + b"EMC", "1 faces stand", id="one lost"),
        pytest.param(
            lambda told: told.replace(b"q 1 0 0 1", b"q 0.99 0 0 0.99", 1),
            "scaled or turned",
            id="one scaled",
        ),
        pytest.param(
            lambda told: b"300 20 40 40 re f " + told, "outside every position", id="a stray mark"
        ),
        pytest.param(
            lambda told: told + b" q 1 g 0 0 600 850 re f Q",
            "nothing is inked on position 1",
            id="covered",
        ),
    ],
)
def test_a_changed_file_is_caught(
    faces: DrawnFaces, change: Callable[[bytes], bytes], fault: str
) -> None:
    """What was done to the file after it was composed comes to light."""
    assert fault in faults_of(rewritten(composed(faces, SHEETS), change), SHEETS, faces)


def test_a_missing_sheet_is_caught(faces: DrawnFaces) -> None:
    """The file has one page for each sheet."""
    assert "1 pages instead of 2 sheets" in faults_of(composed(faces, SHEETS[:1]), SHEETS, faces)


def test_another_page_size_is_caught(faces: DrawnFaces) -> None:
    """Letter instead of A4 would shift every label."""
    letter = tuple(
        replace(sheet, stock=replace(sheet.stock, page=replace(sheet.stock.page, width_mm=215.9)))
        for sheet in SHEETS
    )
    assert "215.90 x 297.00 mm" in faults_of(composed(faces, letter), SHEETS, faces)


def test_ink_beyond_the_printers_reach_is_caught(ink: Ink) -> None:
    """A face at the very edge of the sheet with ink 1 mm from it would be cut off."""
    bar = ShapeBlock("rule", Rect(1.0, 20.0, 30.0, 1.0), fill=Shade.BLACK)
    faces = DrawnFaces((ink.of(page(bar)),), KEYS[:1], KEYS[:1])
    sheets = impose_pages([Face(KEYS[0], FACE)], replace(stock(), left_mm=0.0))
    pdf = composed(faces, sheets)
    assert "beyond the printer's reach" in faults_of(pdf, sheets, faces)
    assert prove_sheets(pdf, sheets, faces, edge_mm=0.5).sheets == 1
