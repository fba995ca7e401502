from __future__ import annotations

import re
import zlib
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

import pikepdf
import pytest
from pikepdf import Array, Dictionary, Name

from service.errors import ProofFailedError
from service.geometry import Insets, Rect, Size
from service.render.plates.plate import ProvedPlate
from service.render.proof.finished.file import prove_file
from service.sheets.correction import Correction
from service.sheets.impose import Face, Sheet, impose_pages
from tests.render.proof.finished.made_file import (
    FACE,
    FONTS,
    INK,
    PARTS,
    MadePlates,
    composed,
    first_of,
    font_object,
    jpeg,
    plate,
    stock,
)

PLATES = {
    "a1": plate("B-042", tone=120),
    "b2": plate("B-043"),
    "c3": plate("Brass", font=1, tone=120),
}
KEYS = ("a1", "b2", "c3", "a1")
SHEETS = impose_pages([Face(key, FACE) for key in KEYS], stock())
TURNED = impose_pages(
    [Face(key, FACE) for key in KEYS], stock(columns=2, rows=1, label=FACE.turned)
)
OFF = Correction(0.999, 0.0005, -0.0007, 1.002, 0.8, -0.6)
SENT = tuple(replace(sheet, correction=OFF) for sheet in SHEETS)
SENT_TURNED = tuple(replace(sheet, correction=OFF) for sheet in TURNED)


def faults_of(
    path: Path, sheets: Sequence[Sheet] = SHEETS, plates: Mapping[str, ProvedPlate] = PLATES
) -> str:
    """Give the faults the proof finds as one text."""
    try:
        prove_file(path, sheets, MadePlates(plates), PARTS)
    except ProofFailedError as error:
        return " ".join(error.faults)
    return ""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Compose the sheets as they should be."""
    return composed(tmp_path / "sheets.pdf", SHEETS, PLATES)


def damaged(path: Path, change: Callable[[pikepdf.Pdf], object]) -> Path:
    """Change the file by another library."""
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        change(pdf)
        pdf.save(path, object_stream_mode=pikepdf.ObjectStreamMode.generate)
    return path


def rewritten(path: Path, change: Callable[[bytes], bytes]) -> Path:
    """Change the instructions of the first sheet."""

    def write(pdf: pikepdf.Pdf) -> None:
        contents = pdf.pages[0].obj.Contents
        contents.write(change(contents.read_bytes()))

    return damaged(path, write)


def first_form(pdf: pikepdf.Pdf) -> pikepdf.Object:
    """Give the first face of the first sheet."""
    return first_of(pdf.pages[0])


def moved(sheets: Sequence[Sheet], number: int, dx_mm: float) -> tuple[Sheet, ...]:
    """Move one face of the first sheet to the right."""
    first, *rest = sheets
    placements = list(first.placements)
    placements[number] = replace(placements[number], rect=placements[number].rect.moved(dx_mm, 0.0))
    return (replace(first, placements=tuple(placements)), *rest)


@pytest.mark.parametrize(
    "sheets",
    [SHEETS, TURNED, SENT, SENT_TURNED],
    ids=["upright", "turned", "corrected", "turned and corrected"],
)
def test_a_file_as_it_should_be_is_proved(tmp_path: Path, sheets: tuple[Sheet, ...]) -> None:
    """The proof counts sheets, placements and plates."""
    path = composed(tmp_path / "sheets.pdf", sheets, PLATES)
    proof = prove_file(path, iter(sheets), MadePlates(PLATES), PARTS)
    assert (proof.sheets, proof.placements, proof.plates) == (2, 4, 3)


@pytest.mark.parametrize("sheets", [SHEETS, SENT_TURNED], ids=["upright", "turned and corrected"])
@pytest.mark.parametrize("dx_mm", [0.002, -0.002, 5.0])
def test_a_moved_face_is_caught(tmp_path: Path, sheets: tuple[Sheet, ...], dx_mm: float) -> None:
    """Two thousandths of a millimetre are enough, either way."""
    path = composed(tmp_path / "sheets.pdf", moved(sheets, 1, dx_mm), PLATES)
    assert "the face b2 on position 2 lies at" in faults_of(path, sheets)


def test_a_face_off_its_die_line_is_caught(tmp_path: Path) -> None:
    """Even where sheet and file agree, a face must stay inside its position."""
    wrong = moved(SHEETS, 0, 0.5)
    path = composed(tmp_path / "sheets.pdf", wrong, PLATES)
    assert "leaves its die line" in faults_of(path, wrong)


def test_a_missing_correction_is_caught(path: Path) -> None:
    """A printer that needs a correction gets it."""
    assert "scaled or turned" in faults_of(path, SENT)
    shifted = tuple(replace(sheet, correction=Correction(shift_x_mm=0.01)) for sheet in SHEETS)
    assert "the face a1 on position 1 lies at" in faults_of(path, shifted)


def test_exchanged_faces_are_caught(tmp_path: Path) -> None:
    """The right number of faces in the wrong positions is not the right sheet."""
    first = SHEETS[0]
    one, two = first.placements
    swapped = replace(first, placements=(replace(one, key=two.key), replace(two, key=one.key)))
    path = composed(tmp_path / "sheets.pdf", (swapped, SHEETS[1]), PLATES)
    assert "position 1 shows another face than a1" in faults_of(path)


def test_other_ink_than_was_proved_is_caught(path: Path) -> None:
    """A plate made anew with one word changed is not the plate that was proved."""
    other = {**PLATES, "b2": plate("B-048")}
    assert "position 2 shows another face than b2: its instructions" in faults_of(
        path, plates=other
    )


def test_a_second_form_of_a_plate_is_caught(path: Path) -> None:
    """One plate is one form, wherever it stands."""

    def exchange(pdf: pikepdf.Pdf) -> None:
        forms = pdf.pages[1].obj.Resources.XObject
        name, whole = list(forms.as_dict().items())[1]
        forms[name] = pdf.make_stream(whole.read_raw_bytes(), whole.stream_dict)

    assert "another form than before" in faults_of(damaged(path, exchange))


@pytest.mark.parametrize(
    ("change", "fault"),
    [
        pytest.param(lambda told: told.split(b"EMC")[0] + b"EMC", "1 faces stand", id="one lost"),
        pytest.param(
            lambda told: told.replace(b"q 1 ", b"q 0.9999 ", 1),
            "scaled or turned",
            id="scaled",
        ),
        pytest.param(
            lambda told: b"300 20 40 40 re f " + told, "beside faces and marks", id="a stray mark"
        ),
        pytest.param(
            lambda told: told + b" q 1 g 0 0 600 850 re f Q",
            "beside faces and marks",
            id="covered",
        ),
        pytest.param(
            lambda told: told.replace(b"0.283465 w", b"0.35 w"), "mm wide", id="a broad mark"
        ),
        pytest.param(
            lambda told: told.replace(b" w 0 G\n", b" w 0 G\n1 1 m 2 2 l\n"),
            "instead of 14 cut marks",
            id="one mark more",
        ),
        pytest.param(
            lambda told: told.replace(b" w 0 G\n", b" w 0 G\n1", 1),
            "a cut mark stands elsewhere",
            id="a mark moved",
        ),
        pytest.param(
            lambda told: re.sub(rb"/X\d+", b"/X999", told, count=1), "than a1: none", id="no face"
        ),
    ],
)
def test_changed_instructions_are_caught(
    path: Path, change: Callable[[bytes], bytes], fault: str
) -> None:
    """What was done to a sheet after it was composed comes to light."""
    assert fault in faults_of(rewritten(path, change))


def _other_picture(pdf: pikepdf.Pdf) -> None:
    first_form(pdf).Resources.XObject["/P0"].write(jpeg(99), filter=Name.DCTDecode)


def _flipped_picture(pdf: pikepdf.Pdf) -> None:
    first_form(pdf).Resources.XObject["/P0"].Decode = Array([1, 0, 1, 0, 1, 0])


def _grey_picture(pdf: pikepdf.Pdf) -> None:
    first_form(pdf).Resources.XObject["/P0"].ColorSpace = Name.DeviceGray


def _other_mark(pdf: pikepdf.Pdf) -> None:
    first_form(pdf).Resources.XObject["/Mcaution"].write(b"0 0 1 1 re f")


def _no_picture(pdf: pikepdf.Pdf) -> None:
    del first_form(pdf).Resources.XObject["/P0"]


def _no_font(pdf: pikepdf.Pdf) -> None:
    del first_form(pdf).Resources.Font["/F0"]


def _lost_glyphs(pdf: pikepdf.Pdf) -> None:
    first_form(pdf).Resources.Font["/F0"] = font_object(pdf, FONTS[0], {1, 2})


def _other_font(pdf: pikepdf.Pdf) -> None:
    glyphs = set(range(900))
    first_form(pdf).Resources.Font["/F0"] = font_object(pdf, FONTS[1], glyphs)


def _wrong_widths(pdf: pikepdf.Pdf) -> None:
    first_form(pdf).Resources.Font["/F0"].DescendantFonts[0].W = Array([0, 2000, 444])


def _not_embedded(pdf: pikepdf.Pdf) -> None:
    del first_form(pdf).Resources.Font["/F0"].DescendantFonts[0].FontDescriptor["/FontFile2"]


def _smaller_box(pdf: pikepdf.Pdf) -> None:
    first_form(pdf).BBox = Array([0, 0, 200, 100])


def _own_matrix(pdf: pikepdf.Pdf) -> None:
    first_form(pdf).Matrix = Array([2, 0, 0, 2, 0, 0])


def _changed_form(pdf: pikepdf.Pdf) -> None:
    first_form(pdf).write(zlib.compress(b"0 0 1 1 re f"), filter=Name.FlateDecode)


def _turned_page(pdf: pikepdf.Pdf) -> None:
    pdf.pages[0].obj.Rotate = 180


def _note(pdf: pikepdf.Pdf) -> None:
    pdf.pages[0].obj.Annots = Array([Dictionary(Type=Name.Annot, Subtype=Name.Square)])


def _acting(pdf: pikepdf.Pdf) -> None:
    pdf.Root.OpenAction = Dictionary(S=Name.Named, N=Name.Print)


def _letter(pdf: pikepdf.Pdf) -> None:
    pdf.pages[0].obj.MediaBox = Array([0, 0, 612, 792])


@pytest.mark.parametrize(
    ("change", "fault"),
    [
        (_other_picture, "than a1: its picture 1 is another"),
        (_flipped_picture, "than a1: its picture 1 is another"),
        (_grey_picture, "than a1: its picture 1 is another"),
        (_no_picture, "than a1: its picture 1 is another"),
        (_other_mark, "than a1: its mark caution is another"),
        (_no_font, "than a1: it has no font 0"),
        (_lost_glyphs, "of the font AtkinsonHyperlegibleNext-Regular is not embedded"),
        (_other_font, "of the font AtkinsonHyperlegibleNext-Regular is not embedded"),
        (_wrong_widths, "of the font AtkinsonHyperlegibleNext-Regular has the width 444"),
        (_not_embedded, "a whole number was expected instead of None"),
        (_smaller_box, "than a1: it is 70.56 x 35.28 mm large"),
        (_own_matrix, "a form says more than it should"),
        (_changed_form, "than a1: its instructions are others"),
        (_turned_page, "the page says more than it should: /Rotate"),
        (_note, "it has 1 links instead of 0"),
        (_acting, "the file does something by itself: /OpenAction"),
        (_letter, "sheet 1: the page is 215.90 x 279.40 mm large"),
    ],
)
def test_a_changed_file_is_caught(
    path: Path, change: Callable[[pikepdf.Pdf], object], fault: str
) -> None:
    """Each part of the file that makes ink is looked at."""
    assert fault in faults_of(damaged(path, change))


def test_a_missing_sheet_is_caught(tmp_path: Path) -> None:
    """The file has one page for each sheet."""
    path = composed(tmp_path / "sheets.pdf", SHEETS[:1], PLATES)
    assert "1 pages instead of 2 sheets" in faults_of(path)


def test_ink_beyond_the_printers_reach_is_caught(tmp_path: Path) -> None:
    """A face at the very edge of the sheet with ink 1 mm from it would be cut off."""
    plates = {"a1": plate("B-042", ink=replace(INK, x_mm=1.0))}
    sheets = impose_pages([Face("a1", FACE)], replace(stock(), left_mm=0.0))
    path = composed(tmp_path / "sheets.pdf", sheets, plates)
    assert "ink beyond the printer's reach" in faults_of(path, sheets, plates)
    better = [replace(sheet, edges=Insets(0.5, 0.5, 0.5, 0.5)) for sheet in sheets]
    assert faults_of(path, better, plates) == ""


def test_a_plate_larger_than_its_room_is_caught(tmp_path: Path) -> None:
    """A plate of another size than the sheet has room for is not printed."""
    whole = PLATES["b2"]
    plates = {"b2": replace(whole, plate=replace(whole.plate, size=Size(100.0, 61.0)))}
    sheets = impose_pages([Face("b2", FACE)], stock())
    path = composed(tmp_path / "sheets.pdf", sheets, plates)
    assert "the face b2 on position 1 has another size than its room" in faults_of(
        path, sheets, plates
    )


def test_ink_outside_its_face_is_caught(tmp_path: Path) -> None:
    """A plate whose ink reaches out of it was never sound."""
    plates = {"a1": plate("B-042", ink=Rect(50.0, 5.0, 51.0, 5.0))}
    sheets = impose_pages([Face("a1", FACE)], stock())
    path = composed(tmp_path / "sheets.pdf", sheets, plates)
    assert "its ink reaches out of it" in faults_of(path, sheets, plates)


@pytest.mark.parametrize(
    "change",
    [
        pytest.param(lambda _: b"", id="empty"),
        pytest.param(lambda data: data[: len(data) // 2], id="cut"),
        pytest.param(lambda _: b"%PDF-1.7\n" + bytes(5000), id="garbage"),
        pytest.param(lambda data: data.replace(b"startxref\n", b"startxref\n1"), id="wrong start"),
        pytest.param(lambda data: data + b"%%EOF", id="added to"),
    ],
)
def test_a_file_that_cannot_be_read_is_no_file(
    path: Path, change: Callable[[bytes], bytes]
) -> None:
    """Whatever is left of a file is not handed over."""
    path.write_bytes(change(path.read_bytes()))
    assert "the file cannot be read back" in faults_of(path)
