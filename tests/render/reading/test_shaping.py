from __future__ import annotations

import pytest

from service.render.reading.fonts import shipped_fonts
from service.render.reading.shaping import Part, Shaper, Way, mirrored, split_parts, split_signs
from tests.render.made import FONTS

ARABIC = "Noto-Sans-Arabic"


@pytest.fixture(scope="module")
def shaper() -> Shaper:
    """Give a shaper with the shipped fonts."""
    return Shaper(shipped_fonts(FONTS))


@pytest.mark.parametrize(
    ("line", "parts"),
    [
        pytest.param("", [], id="nothing"),
        pytest.param("ab cd", ["ab", "cd"], id="words"),
        pytest.param("B-042", ["B", "-", "042"], id="figures and signs"),
        pytest.param("كلB", ["كل", "B"], id="two ways in one word"),
        pytest.param("(كُل)", ["(", "كُل", ")"], id="marks stay with their letter"),
    ],
)
def test_a_line_falls_into_parts(line: str, parts: list[str]) -> None:
    """Blanks and a change of way end a part, so that each can be shaped alone."""
    assert [part.text for part in split_parts(line)] == parts


def test_figures_do_not_order_words() -> None:
    """Figures are a way of their own: among Arabic words they stand as the line asks."""
    ways = [part.way for part in split_parts("كل 12 B .")]
    assert ways == [Way.LEFTWARD, Way.FIGURES, Way.RIGHTWARD, Way.NEUTRAL]


def test_a_part_falls_into_signs() -> None:
    """A letter keeps its marks when no font holds the whole word."""
    signs = split_signs(Part("aq\u0301b", Way.RIGHTWARD))
    assert [sign.text for sign in signs] == ["a", "q\u0301", "b"]


def test_neutral_signs_may_run_both_ways() -> None:
    """A bracket is looked for as it is and turned round; a letter only as it is."""
    assert [one.way for one in mirrored(Part("(", Way.NEUTRAL))] == [Way.RIGHTWARD, Way.LEFTWARD]
    assert list(mirrored(Part("a", Way.RIGHTWARD))) == [Part("a", Way.RIGHTWARD)]


def test_arabic_letters_join(shaper: Shaper) -> None:
    """Two letters that join are drawn otherwise than the same two alone, right one last."""
    joined = shaper.shape(ARABIC, Part("كل", Way.LEFTWARD), language="ar")
    alone = [shaper.shape(ARABIC, Part(one, Way.LEFTWARD), language="ar")[0] for one in "كل"]
    assert len(joined) == 2
    assert {glyph.number for glyph in joined}.isdisjoint(glyph.number for glyph in alone)
    assert joined[0].x_ratio < joined[1].x_ratio


def test_blanks_are_left_out(shaper: Shaper) -> None:
    """A blank shows nothing, so it proves nothing."""
    shaped = shaper.shape(ARABIC, Part("ك ل", Way.LEFTWARD), language="ar")
    assert not {glyph.number for glyph in shaped} & shaper.blanks(ARABIC)


@pytest.mark.parametrize(
    ("font", "text", "covered"),
    [
        pytest.param("Atkinson-Hyperlegible-Next", "Łódź", True, id="Polish"),
        pytest.param("Atkinson-Hyperlegible-Next", "كل", False, id="no Arabic"),
        pytest.param("Atkinson-Hyperlegible-Next", "a\u200d", True, id="a joiner shows nothing"),
        pytest.param(ARABIC, "كُ", True, id="a letter with a mark"),
    ],
)
def test_what_a_font_covers(shaper: Shaper, font: str, text: str, *, covered: bool) -> None:
    """A font covers a text when it has a glyph for all that is shown."""
    assert shaper.covers(font, text) is covered


def test_only_shipped_fonts_are_known(shaper: Shaper) -> None:
    """A font by any other name is not opened."""
    assert shaper.knows(ARABIC)
    assert not shaper.knows("Another-Sans")


@pytest.mark.parametrize(
    ("font", "text", "language"),
    [
        pytest.param("Atkinson-Hyperlegible-Next", "AVA 12", "", id="kerned"),
        pytest.param(ARABIC, "كل", "ar", id="from the right"),
    ],
)
def test_a_whole_line_is_set_as_its_parts(
    shaper: Shaper, font: str, text: str, language: str
) -> None:
    """The glyphs of a line, blanks taken out, are those of its words one after another."""
    line = shaper.shape_line(font, text, language=language)
    parts = [shaper.shape(font, one, language=language) for one in split_parts(text)]
    numbers = [glyph.number for part in parts for glyph in part]
    assert [one for one in line.numbers if one not in shaper.blanks(font)] == numbers
    assert list(line.starts_ratio) == sorted(line.starts_ratio)
    assert line.is_level


def test_a_lifted_mark_is_told(shaper: Shaper) -> None:
    """A line whose marks stand off the baseline is not level."""
    assert not shaper.shape_line(ARABIC, "كُ", language="ar").is_level
