from __future__ import annotations

import io
from collections.abc import Iterator

import pikepdf
import pypdfium2
import pytest
from pikepdf import Array, Dictionary, Name

from service.render.compose.sheets import Parts, write_faces
from service.render.raster import opened
from service.render.reading.face import page_size, read_extents, read_text
from service.render.reading.fonts import shipped_fonts
from service.units import mm_from_points
from tests.render.made import FONTS, page, text
from tests.render.proof.plated import plate_of

HEIGHT_MM = mm_from_points(100.0)


@pytest.fixture
def drawn() -> Iterator[pypdfium2.PdfPage]:
    """Give a page of 200 x 100 points with a form that reaches beyond its own box and the page."""
    with pikepdf.new() as pdf:
        made = pdf.add_blank_page(page_size=(200, 100))
        form = pdf.make_stream(b"10 20 30 40 re f 190 10 20 5 re f")
        form.Type, form.Subtype, form.BBox = Name.XObject, Name.Form, Array([0, 0, 200, 100])
        made.obj.Resources = Dictionary(XObject=Dictionary(X=form))
        made.obj.Contents = pdf.make_stream(b"/X Do")
        data = io.BytesIO()
        pdf.save(data)
    with opened(data.getvalue()) as file:
        yield file[0]


def test_a_page_has_its_size(drawn: pypdfium2.PdfPage) -> None:
    """The size is that of the page's box."""
    size = page_size(drawn)
    assert size.width_mm == pytest.approx(mm_from_points(200))
    assert size.height_mm == pytest.approx(HEIGHT_MM)


def test_a_form_reaches_as_far_as_what_is_in_it(drawn: pypdfium2.PdfPage) -> None:
    """What the form's box would cut off counts too: it shows that something was set too far."""
    (extent,) = read_extents(drawn, height_mm=HEIGHT_MM)
    assert extent.x_mm == pytest.approx(mm_from_points(10), abs=0.01)
    assert extent.right_mm == pytest.approx(mm_from_points(210), abs=0.01)
    assert extent.y_mm == pytest.approx(mm_from_points(40), abs=0.01)
    assert extent.bottom_mm == pytest.approx(mm_from_points(90), abs=0.01)


def test_a_page_without_text_says_nothing(drawn: pypdfium2.PdfPage) -> None:
    """Paths are no text."""
    assert read_text(drawn) == ""


def test_text_comes_back() -> None:
    """What stands on a plate in three fonts can be searched for, and copied."""
    plate = plate_of(page(text("B-042 Łódź ☐")))
    target = io.BytesIO()
    fonts = tuple(shipped_fonts(FONTS).items())
    write_faces(target, [plate], Parts(lambda _: b"", lambda _: b"", fonts))
    with opened(target.getvalue()) as file:
        assert read_text(file[0]).split() == ["B-042", "Łódź", "☐"]
