from __future__ import annotations

import io
from dataclasses import replace

import pikepdf
import pytest
from pikepdf import Array, Dictionary, Name, String

from service.geometry import Size
from service.render.compose.sheets import DrawnFaces, compose_sheets
from service.render.reading.digests import face_digests, form_digest
from service.sheets.impose import Face, Sheet, impose_pages
from tests.render.made import FACE, Ink, page, photo, stock, text

KEYS = ("B-042/1", "B-043/1", "B-044/1")


@pytest.fixture(scope="module")
def faces(ink: Ink) -> DrawnFaces:
    """Draw three faces in two files, the same photo on the first and the last."""
    first = ink.of(page(text("B-042"), photo()), page(text("B-043")))
    return DrawnFaces((first, ink.of(page(text("B-044"), photo()))), KEYS, ("one", "two", "three"))


def sheets(*keys: str) -> tuple[Sheet, ...]:
    """Put faces on sheets of two."""
    return impose_pages([Face(key, FACE) for key in keys], stock())


def composed(faces: DrawnFaces, on: tuple[Sheet, ...]) -> pikepdf.Pdf:
    """Compose and open again."""
    return pikepdf.open(io.BytesIO(compose_sheets(faces, on, title="Lid cards")))


@pytest.mark.print
@pytest.mark.slow
def test_every_face_is_taken_over_whole(faces: DrawnFaces) -> None:
    """The forms on the sheets are, byte for byte, the ink of the faces."""
    with composed(faces, sheets(*KEYS)) as pdf:
        forms = [form for one in pdf.pages for _, form in sorted(one.Resources.XObject.items())]
        assert [form_digest(form) for form in forms] == list(face_digests(faces.pdfs))
        assert [float(side) for side in pdf.pages[0].mediabox] == pytest.approx(
            [0, 0, 595.275591, 841.889764], abs=1e-6
        )


@pytest.mark.print
@pytest.mark.slow
def test_the_same_face_twice_is_one_object(faces: DrawnFaces) -> None:
    """Copies cost a line each, on one sheet and on the next."""
    with composed(faces, sheets(*[KEYS[0]] * 3)) as pdf:
        forms = {form.objgen for one in pdf.pages for form in one.Resources.XObject.values()}
        assert len(forms) == 1


@pytest.mark.print
@pytest.mark.slow
def test_a_photo_on_faces_of_two_files_is_there_once(faces: DrawnFaces) -> None:
    """Chunks bring a photo each; the finished file keeps one."""
    with composed(faces, sheets(KEYS[0], KEYS[2])) as pdf:
        pictures = [one for one in pdf.objects if isinstance(one, pikepdf.Stream)]
        assert sum(one.get(Name.Subtype) == Name.Image for one in pictures) == 1


@pytest.mark.print
@pytest.mark.slow
def test_a_face_brings_nothing_of_its_neighbours(faces: DrawnFaces) -> None:
    """Without the faces that show the photo the file has no photo."""
    with composed(faces, sheets(KEYS[1])) as pdf:
        streams = [one for one in pdf.objects if isinstance(one, pikepdf.Stream)]
        assert not any(one.get(Name.Subtype) == Name.Image for one in streams)


@pytest.mark.print
@pytest.mark.slow
def test_the_same_run_gives_the_same_bytes(faces: DrawnFaces) -> None:
    """Nothing of the moment or the machine gets into the file."""
    once = compose_sheets(faces, sheets(*KEYS), title="Lid cards")
    assert once == compose_sheets(faces, sheets(*KEYS), title="Lid cards")


@pytest.mark.print
@pytest.mark.slow
def test_marks_are_hairlines_and_are_not_read_aloud(faces: DrawnFaces) -> None:
    """Cut marks are an artifact 0.1 mm thin; each face is marked content of its own."""
    with composed(faces, sheets(KEYS[0], KEYS[1])) as pdf:
        content = pdf.pages[0].obj.Contents.read_bytes().decode("ascii")
        assert content.count("/Figure <</MCID") == 2
        marks = content.split("/Artifact BMC")[1]
        assert marks.split()[:2] == ["q", "0.283465"]
        assert marks.count(" l") == len(sheets(KEYS[0], KEYS[1])[0].marks) > 0
        assert [str(one.Alt) for one in pdf.Root.StructTreeRoot.K.K] == ["one", "two"]


@pytest.mark.print
@pytest.mark.slow
def test_a_face_as_large_as_its_sheet_goes_the_same_way(ink: Ink) -> None:
    """A sheet of one position without margins holds its face at the very corner."""
    whole = replace(stock(rows=1), page=FACE, left_mm=0.0, top_mm=0.0)
    faces = DrawnFaces((ink.of(page(text("B-042"))),), KEYS[:1], ("one",))
    with composed(faces, impose_pages([Face(KEYS[0], FACE)], whole)) as pdf:
        assert b"q 1 0 0 1 0 0 cm /F0 Do Q" in pdf.pages[0].obj.Contents.read_bytes()


def test_only_ink_is_taken_over() -> None:
    """Links, scripts, attachments and what opens with the file stay behind."""
    with pikepdf.new() as pdf:
        made = pdf.add_blank_page(page_size=(100, 100))
        action = Dictionary(S=Name.URI, URI=String("file:///etc/hostname"))
        link = Dictionary(Subtype=Name.Link, Rect=Array([0, 0, 9, 9]), A=action)
        made.obj.Annots = Array([pdf.make_indirect(link)])
        made.obj.AA = Dictionary(O=Dictionary(S=Name.JavaScript, JS=String("app.alert(1)")))
        pdf.Root.OpenAction = Dictionary(S=Name.JavaScript, JS=String("app.alert(2)"))
        pdf.attachments["notes.txt"] = b"private"
        data = io.BytesIO()
        pdf.save(data)
    size = Size(*(100 / 72 * 25.4,) * 2)
    on = impose_pages([Face(KEYS[0], size)], stock(label=size))
    faces = DrawnFaces((data.getvalue(),), KEYS[:1], ("one",))
    with composed(faces, on) as pdf:
        told = b" ".join(one.unparse(resolved=True) for one in pdf.objects)
        assert not any(word in told for word in (b"/URI", b"/JavaScript", b"/EmbeddedFile"))
        assert Name.Annots not in pdf.pages[0].obj
        assert Name.OpenAction not in pdf.Root


def test_a_face_that_was_not_drawn_is_refused() -> None:
    """A placement without a face is a slip of the caller."""
    with pytest.raises(KeyError, match="B-042/1"):
        compose_sheets(DrawnFaces((), (), ()), sheets(KEYS[0]), title="Lid cards")
