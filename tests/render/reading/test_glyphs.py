from __future__ import annotations

import io

import pikepdf
import pytest
from pikepdf import Array, Dictionary, Name

from service.render.raster import opened
from service.render.reading.face import read_face
from service.render.reading.glyphs import Glyph, read_glyphs
from service.units import points_from_mm
from tests.render.made import Ink, page, text


def glyphs_of(content: bytes, form: bytes = b"") -> list[tuple[int, float, float, float]]:
    """Read the glyphs of a made page of 100 x 100 points: number, x and y up in points, size."""
    font = Dictionary(
        BaseFont=Name("/ABCDEF+Some-Font"),
        Encoding=Name("/Identity-H"),
        DescendantFonts=Array([Dictionary(W=Array([1, Array([500, 250])]))]),
    )
    with pikepdf.new() as pdf:
        made = pdf.add_blank_page(page_size=(100, 100))
        drawn = pdf.make_stream(form, Subtype=Name.Form, Matrix=Array([1, 0, 0, 1, 5, 0]))
        drawn.Resources = Dictionary(Font=Dictionary(F=font))
        made.obj.Resources = Dictionary(Font=Dictionary(F=font), XObject=Dictionary(X=drawn))
        made.obj.Contents = pdf.make_stream(content)
        return [in_points(glyph) for glyph in read_glyphs(made)]


def in_points(glyph: Glyph) -> tuple[int, float, float, float]:
    """Turn a glyph's place back into points from the bottom left corner."""
    x_pt, y_pt = points_from_mm(glyph.origin.x_mm), 100 - points_from_mm(glyph.origin.y_mm)
    size_pt = points_from_mm(glyph.size_mm)
    return (glyph.number, round(x_pt, 6), round(y_pt, 6), round(size_pt, 6))


@pytest.mark.parametrize(
    ("content", "expected"),
    [
        pytest.param(
            b"BT /F 10 Tf 20 30 Td <00010002> Tj ET",
            [(1, 20, 30, 10), (2, 25, 30, 10)],
            id="widths move the pen",
        ),
        pytest.param(
            b"BT /F 10 Tf 20 30 Td [<0001> 100 <0002>] TJ ET",
            [(1, 20, 30, 10), (2, 24, 30, 10)],
            id="kerning in thousandths moves it back",
        ),
        pytest.param(
            b"BT /F 10 Tf 20 30 Td 3 Ts <0001> Tj 0 Ts <0002> Tj ET",
            [(1, 20, 33, 10), (2, 25, 30, 10)],
            id="rise lifts",
        ),
        pytest.param(
            b"BT /F 10 Tf 2 Tc 50 Tz 20 30 Td <00010002> Tj ET",
            [(1, 20, 30, 10), (2, 23.5, 30, 10)],
            id="spacing and stretch",
        ),
        pytest.param(
            b"q 2 0 0 2 10 10 cm BT /F 10 Tf 1 0 0 1 5 5 Tm <0001> Tj ET Q"
            b" BT /F 10 Tf <0002> Tj ET",
            [(1, 20, 20, 20), (2, 0, 0, 10)],
            id="matrices multiply and come back",
        ),
        pytest.param(
            b"BT /F 10 Tf 20 30 TD <0001> Tj 0 -12 TD <0001> Tj T* <0002> Tj ET",
            [(1, 20, 30, 10), (1, 20, 18, 10), (2, 20, 6, 10)],
            id="lines follow the leading",
        ),
    ],
)
def test_text_operators(content: bytes, expected: list[tuple[int, float, float, float]]) -> None:
    """Places follow the text operators of ISO 32000-1, 9.3 and 9.4."""
    assert glyphs_of(content) == expected


def test_forms_are_followed() -> None:
    """Text inside a drawn form is found at its place; drawing moves nothing outside."""
    found = glyphs_of(
        b"q 1 0 0 1 10 20 cm /X Do Q BT /F 10 Tf <0002> Tj ET", b"BT /F 8 Tf <0001> Tj ET"
    )
    assert found == [(1, 15, 20, 8), (2, 0, 0, 10)]


@pytest.mark.print
@pytest.mark.slow
def test_two_readers_agree(ink: Ink) -> None:
    """PDFium finds each glyph of a drawn line within 0.02 mm of where the content puts it."""
    pdf = ink.of(page(text("1987.412.9 Łódź AVA")))
    with opened(pdf) as shown, pikepdf.open(io.BytesIO(pdf)) as written:
        seen = [(one.origin.x_mm, one.origin.y_mm) for one in read_face(shown[0]).characters]
        read = [(one.origin.x_mm, one.origin.y_mm) for one in read_glyphs(written.pages[0])]
    assert len(seen) == len(read)
    assert [x for x, _ in seen] == pytest.approx([x for x, _ in read], abs=0.02)
    assert [y for _, y in seen] == pytest.approx([y for _, y in read], abs=0.02)
