from __future__ import annotations

import io
import re
import unicodedata
from dataclasses import replace

import pikepdf
import pypdfium2
import pytest
from fontTools.ttLib import TTFont
from pikepdf import Name

from service.geometry import Size
from service.render.compose.fonts import open_face, subset
from service.render.plates.plate import Plate
from service.render.reading.fonts import FontInFile, fonts_of
from tests.render.compose.made_plates import (
    SHIPPED,
    font_use,
    glyphs_of,
    opened,
    plate,
    written_faces,
)

ALL_FONTS = pytest.mark.parametrize("font", range(len(SHIPPED)), ids=[name for name, _ in SHIPPED])


def sample(font: int) -> str:
    """Choose signs that a font has."""
    codes = sorted(open_face(SHIPPED[font][1]).unicodes)
    return "".join(map(chr, [code for code in codes if code > 0xA0][:360:3]))


def programs(pdf: pikepdf.Pdf) -> dict[str, bytes]:
    """Give every font program by the whole name of its font."""
    return {
        str(one.FontName): one.FontFile2.read_bytes()
        for one in pdf.objects
        if isinstance(one, pikepdf.Dictionary) and one.get(Name.Type) == Name.FontDescriptor
    }


def font_on(pdf: pikepdf.Pdf, font: int) -> pikepdf.Object:
    """Give a font as the first form of the first page names it."""
    (form,) = pdf.pages[0].obj.Resources.XObject.values()
    return form.Resources.Font[f"/F{font}"]


def extracted(*plates: Plate) -> str:
    """Give the text PDFium finds on the first page."""
    with pypdfium2.PdfDocument(written_faces(*plates)) as pdf:
        return str(pdf[0].get_textpage().get_text_bounded())


def with_texts(texts: list[str]) -> Plate:
    """Make a plate whose three glyphs stand for these."""
    glyphs = glyphs_of("abc")
    return replace(plate("abc"), fonts=(font_use(0, dict(zip(glyphs, texts, strict=True))),))


def test_plates_share_one_program_a_face() -> None:
    """However many plates, each face is there once and holds the outlines of all of them."""
    texts = ["B-042", "Kompass", "Zinn 7"]
    with opened(written_faces(*map(plate, texts), plate("bold", font=2))) as pdf:
        found = programs(pdf)
        names = sorted(name.rpartition("+")[2] for name in found)
        assert names == sorted(SHIPPED[font][0] for font in (0, 2))
        program = next(data for name, data in found.items() if name.endswith("Next"))
        outlines = TTFont(io.BytesIO(program))["glyf"]
        order = outlines.glyphOrder
        inked = {n for n, name in enumerate(order) if outlines[name].numberOfContours}
        wanted = {glyph for text in texts for glyph in glyphs_of(text.replace(" ", ""))}
        # Accents and the like come along as parts of other glyphs.
        assert wanted <= inked
        assert len(inked) < len(wanted) + 5


@ALL_FONTS
def test_outlines_are_those_of_the_shipped_font(font: int) -> None:
    """Point by point, under the same glyph numbers, the empty box among them; no bytecode."""
    path = SHIPPED[font][1]
    glyphs = [0, *glyphs_of(sample(font)[:20], font=font)]
    cut = TTFont(io.BytesIO(subset(open_face(path), glyphs)))
    whole = TTFont(path)
    assert not {"prep", "fpgm", "cvt ", "GSUB", "GPOS", "name"} & set(cut.keys())
    for glyph in glyphs:
        ours, theirs = (
            one["glyf"][one.getGlyphName(glyph)].getCoordinates(one["glyf"]) for one in (cut, whole)
        )
        assert list(ours[0]) == list(theirs[0])


@ALL_FONTS
def test_widths_and_metrics_are_the_fonts_own(font: int) -> None:
    """Advances and heights agree with the tables of the file (OpenType: hmtx, hhea, head)."""
    text = sample(font)
    tables = TTFont(SHIPPED[font][1])
    scale = 1000 / tables["head"].unitsPerEm
    with opened(written_faces(plate(text, font=font))) as pdf:
        entry = font_on(pdf, font)
        widths = FontInFile(entry).widths
        for glyph in glyphs_of(text, font=font):
            own = tables["hmtx"][tables.getGlyphName(glyph)][0] * scale
            assert widths[glyph] == pytest.approx(own, abs=1e-3)
        said = entry.DescendantFonts[0].FontDescriptor
        head, hhea = tables["head"], tables["hhea"]
        box = [head.xMin, head.yMin, head.xMax, head.yMax]
        assert [float(side) for side in said.FontBBox] == [side * scale for side in box]
        assert [float(said.Ascent), float(said.Descent)] == [
            hhea.ascent * scale,
            hhea.descent * scale,
        ]
        assert float(said.CapHeight) == tables["OS/2"].sCapHeight * scale


def test_names_are_those_the_proof_knows() -> None:
    """Every font of a file is shipped, embedded and written by its own glyph numbers."""
    plates = [plate(sample(font)[:5], font=font) for font in range(len(SHIPPED))]
    with opened(written_faces(*plates)) as pdf:
        forms = [form for page in pdf.pages for form in page.obj.Resources.XObject.values()]
        fonts = fonts_of(forms[0].Resources)
        assert {font.name for font in fonts.values()} == {name for name, _ in SHIPPED}
        assert fonts["/F2"].name == SHIPPED[2][0]
        assert all(font.is_embedded and font.is_by_glyph for font in fonts.values())


def test_the_prefix_names_the_set_of_glyphs() -> None:
    """Six capitals (ISO 32000-1, 9.6.4): the same for the same glyphs, others for others."""
    names: list[str] = []
    for text in ("abc", "cba", "abcd"):
        with opened(written_faces(plate(text))) as pdf:
            names += programs(pdf)
    assert names[0] == names[1] != names[2]
    assert all(re.fullmatch(r"/[A-Z]{6}\+[A-Za-z-]+", name) for name in names)


@ALL_FONTS
def test_another_reader_finds_the_text(font: int) -> None:
    """More signs than fit one block of the table of codes are found by PDFium."""
    text = sample(font)
    found = extracted(plate(text, font=font, size=Size(900.0, 60.0)))
    # PDFium takes letters and their marks apart.
    parted = unicodedata.normalize("NFKD", text)
    assert set(parted) <= set(unicodedata.normalize("NFKD", found))


@pytest.mark.parametrize(
    ("texts", "expected"),
    [
        pytest.param(["a", "ffi", "c"], "affic", id="one glyph for several signs"),
        pytest.param(["a", "\N{PACKAGE}", "c"], "a\N{PACKAGE}c", id="beyond 16 bits"),
        pytest.param(["a", "", "c"], "a\N{ZERO WIDTH SPACE}c", id="nothing made up"),
    ],
)
def test_a_glyph_says_what_its_plate_says(texts: list[str], expected: str) -> None:
    """The text of a glyph is the plate's, not looked up in the font."""
    assert extracted(with_texts(texts)) == expected


def test_a_glyph_without_text_takes_that_of_a_later_plate() -> None:
    """The first text that is one is kept."""
    plates = [with_texts(texts) for texts in (["a", "", "c"], ["x", "b", "y"], ["x", "z", "y"])]
    assert extracted(*plates) == "abc"


def test_many_glyphs_stand_in_several_blocks() -> None:
    """No block of the table of codes has more than 100 entries (ISO 32000-1, 9.7.5.4)."""
    codes = sorted(open_face(SHIPPED[6][1]).unicodes)
    text = "".join(chr(code) for code in codes if 0xA0 < code < 0x250)
    with opened(written_faces(plate(text, font=6))) as pdf:
        table = font_on(pdf, 6).ToUnicode.read_bytes()
        counts = [int(count) for count in re.findall(rb"(\d+) beginbfchar", table)]
        assert sum(counts) == len(set(glyphs_of(text, font=6))) > 100 >= max(counts)
