"""Tests for lines put together pair by pair, against lines shaped whole by Pango."""

from __future__ import annotations

from pathlib import Path

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st

from service.render.reading.fonts import shipped_fonts
from service.render.reading.glyphs import RunReader
from service.render.reading.shaping import Shaper
from service.render.task import FONTS_CONF
from service.render.typeset.faces import Face
from service.render.typeset.line import SetLine
from service.render.typeset.operators import show_runs
from service.render.typeset.pairs import Pairs, advance_mm, is_plain, put_together
from service.render.typeset.setter import Typesetter
from service.render.typeset.shaped import LineShaper
from service.units import css_pixels_from_points, mm_from_css_pixels

MAIN = {400: 0, 600: 1, 700: 2, 800: 3}
"""Atkinson Hyperlegible Next stands first in `fonts.toml`, in these weights."""
SHIPPED = shipped_fonts(FONTS_CONF.parent)
FILES = list(SHIPPED.values())
READER = RunReader(list(SHIPPED), Shaper(SHIPPED))
SIGNS = "abdefgklmnoprstuvwyzABCFLTVWY0123456789 .,;:-–/()'’“”&+×£€éÉłŁŵŶñß½±²"  # noqa: RUF001


@pytest.fixture(scope="module")
def setter() -> Typesetter:
    """Give a typesetter."""
    return Typesetter(FONTS_CONF)


class Whole(Typesetter):
    """A typesetter that shapes every line whole."""

    def _set_plain(self, text: str, size_pt: float, weight: int) -> SetLine | None:
        del text, size_pt, weight
        return None


WHOLE = Whole(FONTS_CONF)
PAIRS = Typesetter(FONTS_CONF)


@given(
    st.text(SIGNS, min_size=1, max_size=40).filter(str.strip),
    st.sampled_from(sorted(MAIN)),
    st.sampled_from([6.9, 9.0, 24.0]),
)
def test_pairs_give_what_the_shaper_gives(text: str, weight: int, size_pt: float) -> None:
    """Glyph for glyph, within a thousandth of the em and a few units of the shaper's rounding."""
    one, other = (
        setter.set_line(text, size_pt=size_pt, weight=weight, language="", is_right_to_left=False)
        for setter in (PAIRS, WHOLE)
    )
    ours, theirs = (READER.read(line.operators).glyphs for line in (one, other))
    assert [glyph.number for glyph in ours] == [glyph.number for glyph in theirs]
    assert {glyph.font for glyph in ours} == {glyph.font for glyph in theirs}
    for glyph, twin in zip(ours, theirs, strict=True):
        assert glyph.origin.x_mm == pytest.approx(twin.origin.x_mm, abs=0.002 * size_pt * 0.353)
    assert one.width_mm == pytest.approx(other.width_mm, abs=0.01)
    assert (one.ascent_mm, one.descent_mm) == pytest.approx((other.ascent_mm, other.descent_mm))
    for font, glyphs in other.glyphs.items():
        assert one.glyphs[font] == glyphs


@pytest.mark.parametrize("number", MAIN.values())
def test_the_main_face_knows_no_context(number: int) -> None:
    """What makes pairs enough: by default it composes marks and kerns, and nothing else.

    Figures of one width are asked for; all other features of its tables are off unless asked for
    or belong to a language (OpenType, registered features).
    """
    font = TTFont(FILES[number])
    substitutions = {record.FeatureTag for record in font["GSUB"].table.FeatureList.FeatureRecord}
    assert substitutions <= {"aalt", "case", "ccmp", "frac", "locl", "ordn", "pnum", "sups", "tnum"}
    positions = {record.FeatureTag for record in font["GPOS"].table.FeatureList.FeatureRecord}
    assert positions <= {"kern", "mark", "mkmk", "cpsp"}
    kerning = [
        type(getattr(part, "ExtSubTable", part)).__name__
        for record in font["GPOS"].table.FeatureList.FeatureRecord
        if record.FeatureTag == "kern"
        for place in record.Feature.LookupListIndex
        for part in font["GPOS"].table.LookupList.Lookup[place].SubTable
    ]
    assert set(kerning) == {"PairPos"}


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        pytest.param("Półka 3, £5 – ½", True, id="Latin"),  # noqa: RUF001
        pytest.param("", True, id="nothing"),
        pytest.param("Σφραγίδα", False, id="Greek"),
        pytest.param("5 Ω", False, id="one Greek letter"),
        pytest.param("e\u0301", False, id="a mark of its own"),
        pytest.param("a\u00a0b", False, id="a blank that does not break"),
        pytest.param("a\u00adb", False, id="a soft hyphen"),
        pytest.param("كل", False, id="Arabic"),
        pytest.param("蓋", False, id="Han"),
        pytest.param("Phở", False, id="Vietnamese"),
    ],
)
def test_only_plain_text_is_put_together(text: str, plain: bool) -> None:  # noqa: FBT001
    """Letters that join, stack or come from another face are left to the shaper."""
    assert is_plain(text) is plain


def test_a_sign_the_face_lacks_is_left_to_the_shaper() -> None:
    """A plain sign that the main face does not hold makes the line none of its own."""
    assert put_together("gap ♀", Pairs(Face(0, FILES[0]))) is None


def test_what_was_set_before_changes_nothing() -> None:
    """A line is the same whether it is the first one set or comes after others."""
    fresh, used = Typesetter(FONTS_CONF), Typesetter(FONTS_CONF)
    for text in ("To Ty", "AVA T. 1987", "Yes, we keep"):
        used.set_line(text, size_pt=7.0, weight=700, language="", is_right_to_left=False)
    for one in (fresh, used):
        one.set_line("blank", size_pt=60.0, weight=700, language="", is_right_to_left=False)
    lines = [
        one.set_line(
            "AVA Ty 1987, T.", size_pt=8.6, weight=700, language="", is_right_to_left=False
        )
        for one in (fresh, used)
    ]
    assert lines[0] == lines[1]


def test_advances_are_those_of_the_font() -> None:
    """Alone, a letter goes as far as the font's own table of advances says."""
    font = TTFont(FILES[0])
    advance = font["hmtx"][font.getBestCmap()[ord("H")]][0] * 1000 / font["head"].unitsPerEm
    line = put_together("H", Pairs(Face(0, FILES[0])))
    assert line is not None
    assert line.advance == pytest.approx(advance)
    assert advance_mm(line.advance, 72.0) == pytest.approx(25.4 * advance / 1000)


def test_shaper_is_only_asked_for_the_height(setter: Typesetter) -> None:
    """The extents of a plain line are those of the face, as Pango gives them for any text."""
    shaper = LineShaper(Path(FONTS_CONF))
    shaper.shape_line(
        b"Hxg",
        size_px=css_pixels_from_points(10.0),
        weight=400,
        language="",
        is_right_to_left=False,
    )
    _, ascent, descent = shaper.extents()
    line = setter.set_line("Hxg", size_pt=10.0, weight=400, language="", is_right_to_left=False)
    assert line.ascent_mm == pytest.approx(mm_from_css_pixels(ascent / 1024))
    assert line.descent_mm == pytest.approx(mm_from_css_pixels(descent / 1024))
    assert show_runs([], 10.0) == ""
