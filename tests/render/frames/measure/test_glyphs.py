from __future__ import annotations

import pikepdf
import pytest
from pikepdf import Dictionary, Name

from service.geometry import Point
from service.render.frames.measure.glyphs import page_glyphs
from service.render.reading.glyphs import Glyph


def glyphs_of(content: str, form: str = "") -> list[tuple[int, float, float, float]]:
    """Read a page of one inch; a glyph of the font is half an em wide, or a whole one."""
    with pikepdf.new() as pdf:
        page = pdf.add_blank_page(page_size=(72, 72))
        font = Dictionary(
            Type=Name.Font,
            Subtype=Name.Type0,
            BaseFont=Name("/ABCDEF+Made-Up"),
            Encoding=Name("/Identity-H"),
            DescendantFonts=[Dictionary(W=[1, [500, 500]])],
        )
        fonts = Dictionary(F0=font)
        drawn = pdf.make_stream(
            form.encode(),
            Type=Name.XObject,
            Subtype=Name.Form,
            BBox=[0, 0, 9, 9],
            Matrix=[1, 0, 0, 1, 0, 36],
            Resources=Dictionary(Font=fonts),
        )
        page.Resources = Dictionary(Font=fonts, XObject=Dictionary(Fm=drawn))
        page.Contents = pdf.make_stream(content.encode())
        glyphs = page_glyphs(page)
    assert all(glyph.font == "Made-Up" for glyph in glyphs)
    return [(one.number, *_rounded(one)) for one in glyphs]


def _rounded(glyph: Glyph) -> tuple[float, float, float]:
    origin: Point = glyph.origin
    return round(origin.x_mm, 3), round(origin.y_mm, 3), round(glyph.size_mm, 3)


# 72 points are 25.4 mm; 18 points are 6.35 mm.
CASES = {
    "advances": (
        "BT 18 36 Td /F0 36 Tf <00010003> Tj <0002> Tj ET",
        [(1, 6.35, 12.7, 12.7), (3, 12.7, 12.7, 12.7), (2, 25.4, 12.7, 12.7)],
    ),
    "shifts": (
        "BT /F0 36 Tf [<0001> 500 <0001>] TJ ET",
        [(1, 0.0, 25.4, 12.7), (1, 0.0, 25.4, 12.7)],
    ),
    "upside-down": (
        "1 0 0 -1 0 72 cm q 0.5 0 0 0.5 0 0 cm BT 1 0 0 -1 36 72 Tm /F0 36 Tf <0001> Tj ET Q",
        [(1, 6.35, 12.7, 6.35)],
    ),
    "raised": ("BT /F0 36 Tf 18 Ts <0001> Tj ET", [(1, 0.0, 19.05, 12.7)]),
    "state": (
        "/F0 36 Tf q /F0 18 Tf Q BT <0001> Tj ET BT 18 0 Td 18 0 Td <0001> Tj ET",
        [(1, 0.0, 25.4, 12.7), (1, 12.7, 25.4, 12.7)],
    ),
}


@pytest.mark.parametrize(("content", "glyphs"), CASES.values(), ids=CASES)
def test_glyphs_stand_where_the_operators_put_them(
    content: str, glyphs: list[tuple[int, float, float, float]]
) -> None:
    """Numbers, origins and sizes worked out by hand (ISO 32000-1, 9.4)."""
    assert glyphs_of(content) == glyphs


def test_forms_are_followed() -> None:
    """Text in a form stands where form and page put it."""
    form = "BT /F0 18 Tf <0001> Tj ET"
    assert glyphs_of("q 2 0 0 2 0 0 cm /Fm Do Q /None Do", form) == [(1, 0.0, 0.0, 12.7)]
