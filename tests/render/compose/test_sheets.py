from __future__ import annotations

import io
import tracemalloc
from dataclasses import replace
from itertools import pairwise

import pikepdf
import pypdf
import pypdfium2
import pytest
from pikepdf import Name

from service.geometry import Point
from service.render.compose.sheets import Parts, write_sheets
from service.render.matrix import Matrix, matrix_of, moved
from service.sheets.correction import NO_CORRECTION, Correction
from service.sheets.impose import Placement, Sheet
from service.units import mm_from_points, points_from_mm
from tests.render.compose.made_plates import (
    FACE,
    PARTS,
    PHOTOS,
    Plates,
    jpeg,
    opened,
    plate,
    sheets,
    stock,
    streams,
    written,
    written_faces,
)

KEYS = ("B-042", "B-043", "B-044")
MADE = {key: plate(key, photos=list(PHOTOS)[:1], marks=("caution",)) for key in KEYS}
SKEWED = Correction(1.01, 0.002, -0.003, 0.99, 0.4, -0.6)


def placed_matrices(page: pikepdf.Page) -> list[Matrix]:
    """Give the matrix before each form a page draws."""
    steps = pikepdf.parse_content_stream(page)
    return [
        matrix_of(before.operands) for before, step in pairwise(steps) if str(step.operator) == "Do"
    ]


def corner_mm(matrix: Matrix, *, sheet: Sheet) -> Point:
    """Tell where the bottom left corner of a face lies, counted from the top."""
    *_, x_pt, y_pt = matrix
    return Point(mm_from_points(x_pt), sheet.stock.page.height_mm - mm_from_points(y_pt))


@pytest.mark.parametrize("correction", [NO_CORRECTION, SKEWED], ids=["as it is", "corrected"])
@pytest.mark.parametrize("turned_deg", [0, 90])
def test_every_corner_goes_where_the_sheet_says(turned_deg: int, correction: Correction) -> None:
    """All four corners of every face, to a thousandth of a millimetre."""
    on = []
    for sheet in sheets(*KEYS):
        size = FACE if turned_deg == 0 else FACE.turned
        placements = [_turned(placed, turned_deg) for placed in sheet.placements]
        on.append(replace(sheet, placements=tuple(placements), correction=correction))
        assert placements[0].rect.size == size
    with opened(written(MADE, on)) as pdf:
        for page, sheet in zip(pdf.pages, on, strict=True):
            matrices = placed_matrices(page)
            for matrix, placed in zip(matrices, sheet.placements, strict=True):
                for (x_mm, y_mm), wanted in _corners(placed):
                    found = moved(matrix, points_from_mm(x_mm), points_from_mm(y_mm))
                    here, there = corner_mm(found, sheet=sheet), correction.moved(wanted)
                    assert (here.x_mm, here.y_mm) == pytest.approx(
                        (there.x_mm, there.y_mm), abs=1e-3
                    )


def _turned(placed: Placement, turned_deg: int) -> Placement:
    rect = placed.rect
    if turned_deg:
        rect = replace(rect, width_mm=rect.height_mm, height_mm=rect.width_mm)
    return replace(placed, rect=rect, turned_deg=turned_deg)


def _corners(placed: Placement) -> list[tuple[tuple[float, float], Point]]:
    """Pair corners of the face, counted from below, with the points they belong on."""
    rect, (width, height) = placed.rect, (FACE.width_mm, FACE.height_mm)
    lower_left = Point(rect.x_mm, rect.bottom_mm)
    upper_left = Point(rect.x_mm, rect.y_mm)
    upper_right = Point(rect.right_mm, rect.y_mm)
    lower_right = Point(rect.right_mm, rect.bottom_mm)
    points = [lower_left, lower_right, upper_right, upper_left]
    if placed.turned_deg:
        points = [upper_left, lower_left, lower_right, upper_right]
    return list(
        zip([(0.0, 0.0), (width, 0.0), (width, height), (0.0, height)], points, strict=True)
    )


def test_the_same_face_is_there_once() -> None:
    """Copies cost a line each, on one sheet and on the next, and are asked for once."""
    plates = Plates(MADE)
    target = io.BytesIO()
    write_sheets(target, sheets(*[KEYS[0]] * 5, KEYS[1]), plates, PARTS, title="copies")
    assert plates.asked == [(KEYS[0], KEYS[1])]
    with opened(target.getvalue()) as pdf:
        assert len({one.read_raw_bytes() for one in streams(pdf, subtype="Form")}) == 3
        assert len(streams(pdf, subtype="Form")) == 3
        assert [len(placed_matrices(page)) for page in pdf.pages] == [2, 2, 2]


def test_plates_are_asked_for_a_few_sheets_at_a_time() -> None:
    """No plate is asked for twice, and never all of them at once."""
    keys = [f"B-{n}" for n in range(40)]
    plates = Plates({key: plate(key) for key in keys})
    write_sheets(io.BytesIO(), sheets(*keys), plates, PARTS, title="many")
    assert [key for asked in plates.asked for key in asked] == keys
    assert max(map(len, plates.asked)) <= 16


def test_a_plate_that_is_not_there_is_refused() -> None:
    """A placement without a plate is a slip of the caller."""
    with pytest.raises(KeyError, match="B-099"):
        written(MADE, sheets("B-099"))


@pytest.mark.parametrize("tagged", [True, False], ids=["tagged", "plain"])
def test_the_same_run_gives_the_same_bytes(*, tagged: bool) -> None:
    """Nothing of the moment or the machine gets into the file."""
    once = written(MADE, sheets(*KEYS), tagged=tagged)
    assert once == written(MADE, sheets(*KEYS), tagged=tagged)
    assert once != written(MADE, sheets(*reversed(KEYS)), tagged=tagged)


@pytest.mark.parametrize("tagged", [True, False], ids=["tagged", "plain"])
def test_three_readers_read_the_file(*, tagged: bool) -> None:
    """The text on each sheet is found by PDFium and pypdf; pikepdf has no complaint."""
    data = written(MADE, sheets(*KEYS), tagged=tagged)
    opened(data).close()
    with pypdfium2.PdfDocument(data) as pdf:
        found = [page.get_textpage().get_text_bounded().split() for page in pdf]
        assert found == [["B-042", "B-043"], ["B-044"]]
    reader = pypdf.PdfReader(io.BytesIO(data), strict=True)
    assert [page.extract_text().split() for page in reader.pages] == found


def test_tags_can_be_left_out() -> None:
    """Then nothing of them is in the file."""
    with opened(written(MADE, sheets(*KEYS), tagged=False)) as pdf:
        assert not {"/StructTreeRoot", "/MarkInfo"} & set(pdf.Root.keys())
        assert Name.StructParents not in pdf.pages[0].obj
        assert b"BDC" not in pdf.pages[0].obj.Contents.read_bytes()


def test_each_face_is_a_figure_with_the_words_of_its_plate() -> None:
    """In the order of the sheet, with the box where the corrected face lies."""
    on = [replace(sheet, correction=Correction(shift_x_mm=2.0)) for sheet in sheets(*KEYS)]
    with opened(written(MADE, on)) as pdf:
        figures = pdf.Root.StructTreeRoot.K.K
        assert [str(one.Alt) for one in figures] == list(KEYS)
        left_mm, bottom_mm, right_mm, top_mm = (
            mm_from_points(float(side)) for side in figures[0].A.BBox
        )
        wanted = (22.0, 297.0 - 90.0, 122.0, 297.0 - 30.0)
        assert (left_mm, bottom_mm, right_mm, top_mm) == pytest.approx(wanted, abs=1e-3)
        content = pdf.pages[0].obj.Contents.read_bytes()
        assert [b"/MCID %d" % n in content for n in range(3)] == [True, True, False]


@pytest.mark.parametrize("correction", [NO_CORRECTION, SKEWED], ids=["as they are", "corrected"])
def test_cut_marks_are_hairlines_and_are_not_read_aloud(correction: Correction) -> None:
    """An artifact 0.1 mm thin, sent where the correction sends it."""
    sheet = replace(sheets(KEYS[0], KEYS[1])[0], correction=correction)
    with opened(written(MADE, [sheet])) as pdf:
        content = pdf.pages[0].obj.Contents.read_bytes().decode("ascii")
        marks = content.split("/Artifact BMC")[1].split()
        assert marks[:2] == ["q", "0.283465"]
        assert marks.count("l") == len(sheet.marks) > 0
        first = correction.moved(sheet.marks[0].start)
        at = marks.index("m")
        x_pt, y_pt = (float(value) for value in marks[at - 2 : at])
        assert (mm_from_points(x_pt), 297.0 - mm_from_points(y_pt)) == pytest.approx(
            (first.x_mm, first.y_mm), abs=1e-3
        )


def test_faces_are_pages_of_their_own_size() -> None:
    """A plate as it is: the form that goes on sheets, unmoved."""
    turned = plate("B-043", size=FACE.turned)
    with opened(written_faces(MADE["B-042"], turned)) as pdf:
        sizes = [[mm_from_points(float(side)) for side in page.mediabox] for page in pdf.pages]
        assert sizes[0] == pytest.approx([0, 0, 100.0, 60.0], abs=1e-3)
        assert sizes[1] == pytest.approx([0, 0, 60.0, 100.0], abs=1e-3)
        (form,) = pdf.pages[0].obj.Resources.XObject.values()
        assert form.read_raw_bytes() == MADE["B-042"].content
    with pypdfium2.PdfDocument(written_faces(MADE["B-042"], turned)) as pdf:
        assert [page.get_textpage().get_text_bounded() for page in pdf] == ["B-042", "B-043"]


def test_a_small_label_costs_less_than_a_kilobyte() -> None:
    """Tags, placement and all: what a label adds to a sheet of labels beyond its own ink."""
    on = stock(columns=1, rows=4)
    made = {f"B-{n:04}": plate(f"B-{n:04}") for n in range(400)}
    few, many = (len(written(made, sheets(*list(made)[:count], on=on))) for count in (200, 400))
    ink = sum(len(one.content) for one in made.values()) / len(made)
    assert (many - few) / 200 < ink + 300


def test_memory_does_not_grow_with_the_pictures() -> None:
    """Ten times as many photos need hardly more memory: they pass through one by one."""
    peaks = [_peak_bytes(count) for count in (20, 200)]
    assert peaks[1] < peaks[0] + 1_000_000


def _peak_bytes(count: int) -> int:
    """Measure how much a file of faces with a photo of 40 kB each needs at most."""
    photo = jpeg(90)
    parts = Parts(lambda name: photo + name.encode() * 600, PARTS.marks, PARTS.fonts)
    keys = [f"B-{n:03}" for n in range(count)]
    made = {key: plate(key, photos=[f"{n:064x}"]) for n, key in enumerate(keys)}
    on = sheets(*keys)
    tracemalloc.start()
    try:
        write_sheets(_Nowhere(), on, Plates(made), parts, title="many")
        return tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()


class _Nowhere(io.BytesIO):
    def write(self, data: object) -> int:
        assert isinstance(data, bytes)
        return len(data)
