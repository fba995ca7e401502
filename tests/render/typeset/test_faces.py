from __future__ import annotations

import pytest
from fontTools.ttLib import TTFont

from service.render.reading.fonts import shipped_fonts
from service.render.task import FONTS_CONF
from service.render.typeset.faces import Face, Faces
from service.render.typeset.shaped import EMPTY_GLYPH, LineShaper

FILES = tuple(shipped_fonts(FONTS_CONF.parent).values())


@pytest.fixture(scope="module")
def shaper() -> LineShaper:
    """Load the shipped fonts once."""
    return LineShaper(FONTS_CONF)


@pytest.mark.parametrize("number", range(len(FILES)), ids=[file.stem for file in FILES])
def test_advances_and_codes_are_those_of_the_file(number: int) -> None:
    """Advances are thousandths of the em as the `hmtx` table has them (OpenType 1.9)."""
    face = Face(number, FILES[number])
    with TTFont(FILES[number]) as font:
        units_per_em = font["head"].unitsPerEm
        for glyph in (0, 1, 40, font["maxp"].numGlyphs - 1):
            width, _ = font["hmtx"][font.getGlyphName(glyph)]
            assert face.codes[glyph] == (round(width * 1000 / units_per_em), f"{glyph:04x}")


def test_a_character_no_font_holds_takes_the_glyph_for_it() -> None:
    """Numbers beyond the empty glyph stand for such characters, and are not remembered."""
    face = Face(0, FILES[0])
    assert face.codes[EMPTY_GLYPH + 1 + 0x12000] == face.codes[0]
    assert list(face.codes) == [0]


@pytest.mark.parametrize(
    ("text", "language", "weight", "file"),
    [
        ("Brass", "", 400, "AtkinsonHyperlegibleNext-Regular.ttf"),
        ("Brass", "", 800, "AtkinsonHyperlegibleNext-ExtraBold.ttf"),
        ("Brass", "vi", 700, "NotoSans-Bold.ttf"),
        ("骨", "ja", 400, "NotoSansJP-Regular.ttf"),
        ("骨", "zh", 400, "NotoSansSC-Regular.ttf"),
        ("كأس", "ar", 700, "NotoSansArabic-Bold.ttf"),
    ],
)
def test_a_font_is_known_by_its_file(
    text: str, language: str, weight: int, file: str, shaper: LineShaper
) -> None:
    """Fonts are counted in the order of `fonts.toml`, whatever the size."""
    faces = Faces(FONTS_CONF, shaper)
    for size_px in (9.0, 15.0, 9.0):
        shaper.shape_line(
            text.encode(), size_px=size_px, weight=weight, language=language, is_right_to_left=False
        )
        (run,) = shaper.runs()
        assert FILES[faces.face(run.font).number].name == file


def test_a_face_tells_whose_glyph_it_is() -> None:
    """The glyph of a letter before any shaping is its own."""
    face = Face(0, FILES[0])
    with TTFont(FILES[0]) as font:
        glyph = font.getGlyphID(font.getBestCmap()[ord("E")])
    assert face.shows("E", glyph)
    assert not face.shows("F", glyph)
