from __future__ import annotations

import io
from collections.abc import Iterator
from pathlib import Path

import pikepdf
import pytest
from fontTools.ttLib import TTFont
from pikepdf import Array, Dictionary, Name

from service.render.reading.fonts import FontInFile, font_faults, fonts_of, shipped_fonts
from service.render.task import SOURCE_DATE_EPOCH
from service.render.worker import Workers
from tests.render.made import FONTS, Ink, page, text

FOREIGN = "Harbour Sans"


@pytest.fixture
def foreign_ink(tmp_path: Path) -> Iterator[Ink]:
    """Give a process that knows one font alone, ours under another name."""
    font = TTFont(FONTS / "AtkinsonHyperlegibleNext-Regular.ttf")
    for record in font["name"].names:
        if record.nameID in {1, 3, 4, 6, 16}:
            record.string = FOREIGN
    font.save(tmp_path / "foreign.ttf")
    conf = tmp_path / "fonts.conf"
    conf.write_text(
        f"<fontconfig><dir>{tmp_path}</dir><cachedir>{tmp_path}</cachedir></fontconfig>"
    )
    environment = {"FONTCONFIG_FILE": str(conf), "SOURCE_DATE_EPOCH": SOURCE_DATE_EPOCH}
    with Workers(1, environment=environment) as workers:
        yield Ink(workers)


@pytest.mark.print
@pytest.mark.slow
def test_a_foreign_font_is_told(foreign_ink: Ink) -> None:
    """The engine falls back without a word; the name in the file gives it away."""
    with pikepdf.open(io.BytesIO(foreign_ink.of(page(text("B-042"))))) as pdf:
        faults = list(font_faults(pdf.pages, shipped_fonts(FONTS)))
    assert faults == ["page 1: the font Harbour-Sans is none of those shipped"]


@pytest.mark.print
@pytest.mark.slow
def test_our_fonts_pass(ink: Ink) -> None:
    """A page in our fonts has ours alone, embedded and written by glyph numbers."""
    with pikepdf.open(io.BytesIO(ink.of(page(text("B-042 ☐ Όλα"))))) as pdf:
        fonts = fonts_of(pdf.pages[0].obj.Resources).values()
        assert {font.name for font in fonts} <= set(shipped_fonts(FONTS))
        assert all(font.is_embedded and font.is_by_glyph for font in fonts)
        assert list(font_faults(pdf.pages, shipped_fonts(FONTS))) == []


def test_every_face_of_the_table_has_a_name() -> None:
    """Each shipped file is known by the name a PDF gives it; weights are called as Pango does."""
    shipped = shipped_fonts(FONTS)
    assert {path.name for path in shipped.values()} == {path.name for path in FONTS.glob("*.ttf")}
    assert shipped["Atkinson-Hyperlegible-Next-Semi-Bold"].stem.endswith("SemiBold")
    assert shipped["Noto-Sans-JP"].stem == "NotoSansJP-Regular"


def font(**changes: pikepdf.Object) -> FontInFile:
    """Make a composite font as the engine writes it, but for some entries."""
    descendant = Dictionary(
        Subtype=Name.CIDFontType2,
        W=Array([3, Array([260, 270]), 7, 9, 500]),
        FontDescriptor=Dictionary(FontFile2=Dictionary()),
    )
    entry = Dictionary(
        BaseFont=Name("/ABCDEF+Noto-Sans-Symbols-2,"),
        Encoding=Name("/Identity-H"),
        DescendantFonts=Array([descendant]),
    )
    for key, value in changes.items():
        entry[f"/{key}"] = value
    return FontInFile(entry)


def test_names_lose_prefix_and_comma() -> None:
    """The subset's prefix and the comma after a family that ends with a number are not the name."""
    assert font().name == "Noto-Sans-Symbols-2"


def test_widths_come_in_both_forms() -> None:
    """Widths are listed one by one, or once for a range (ISO 32000-1, 9.7.4.3)."""
    assert font().widths == {3: 260.0, 4: 270.0, 7: 500.0, 8: 500.0, 9: 500.0}


def test_a_font_that_stays_at_home_is_told() -> None:
    """A font without outlines, or one whose codes are no glyph numbers, is seen."""
    assert not font(DescendantFonts=Array([Dictionary()])).is_embedded
    assert not font(Encoding=Name.WinAnsiEncoding).is_by_glyph


def test_codes_may_have_a_table() -> None:
    """Where a table leads from codes to glyphs it is followed; what it leaves out has no glyph."""
    with pikepdf.new() as pdf:
        table = pdf.make_stream(b"2 begincidchar\n<000c> 12\n<0188> 0\nendcidchar")
        listed = font(Encoding=table)
        assert listed.is_by_glyph
        assert [listed.glyph(code) for code in (0x0C, 0x188, 0x20)] == [12, 0, 0]
    assert font().glyph(0x0C) == 12
