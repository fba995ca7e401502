from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest

from service.geometry import Point
from service.render.proof.text.words import word_faults
from service.render.reading.fonts import shipped_fonts
from service.render.reading.glyphs import Glyph
from service.render.reading.shaping import Shaper, split_parts
from tests.render.made import FONTS

ARABIC, LATIN = "Noto-Sans-Arabic", "Atkinson-Hyperlegible-Next"
SIZE_MM = 4.0


@pytest.fixture(scope="module")
def shaper() -> Shaper:
    """Give a shaper with the shipped fonts."""
    return Shaper(shipped_fonts(FONTS))


def set_line(words: str, shaper: Shaper, font: str = ARABIC, *, x_mm: float = 0.0) -> list[Glyph]:
    """Set the words one after another from the left, as they come, a centimetre apart."""
    return [
        Glyph(
            font,
            one.number,
            Point(x_mm + 10.0 * number + one.x_ratio * SIZE_MM, 20.0 - one.y_ratio * SIZE_MM),
            SIZE_MM,
        )
        for number, part in enumerate(split_parts(words))
        for one in shaper.shape(font, part, language="ar")
    ]


def faults(line: str, glyphs: Sequence[Glyph], shaper: Shaper) -> list[str]:
    """Give what is wrong with a line."""
    return list(word_faults(line, glyphs, shaper, language="ar"))


def test_words_from_the_right_stand_in_their_order(shaper: Shaper) -> None:
    """The first of two Arabic words stands on the right; on the left it is a fault."""
    assert faults("كلُّ صندوق", set_line("صندوق كلُّ", shaper), shaper) == []
    assert faults("كلُّ صندوق", set_line("كلُّ صندوق", shaper), shaper) == [
        "the words stand in another order"
    ]


def test_the_same_word_may_come_twice(shaper: Shaper) -> None:
    """Each word has glyphs of its own; one of two equal words is not enough."""
    assert faults("كل كل", set_line("كل كل", shaper), shaper) == []
    assert faults("كل كل", set_line("كل", shaper), shaper) == ["'كل' is not set as its script asks"]


def test_signs_nobody_asked_for_are_told(shaper: Shaper) -> None:
    """A glyph left over after all words were found is a fault."""
    glyphs = set_line("صندوق كل", shaper)
    told = faults("كل", glyphs, shaper)
    assert told == [f"{len(glyphs) - 2} signs are printed that no word asked for"]


def test_a_displaced_mark_is_told(shaper: Shaper) -> None:
    """The right glyph a quarter of an em too high is not what the shaper gives."""
    glyphs = set_line("كُ", shaper)
    lifted = [
        replace(glyph, origin=Point(glyph.origin.x_mm, glyph.origin.y_mm - SIZE_MM / 4))
        if number == 0
        else glyph
        for number, glyph in enumerate(glyphs)
    ]
    assert faults("كُ", glyphs, shaper) == []
    assert faults("كُ", lifted, shaper) == ["'كُ' is not set as its script asks"]


def test_a_bracket_may_be_turned_round(shaper: Shaper) -> None:
    """In a line from the right the opening bracket is drawn as the closing one."""
    turned = set_line(")كل(", shaper)
    assert faults("(كل)", turned, shaper) == []


def test_words_in_two_fonts(shaper: Shaper) -> None:
    """Latin letters among Arabic ones come from another font; both are found."""
    glyphs = [*set_line("ABC", shaper, LATIN), *set_line("كل", shaper, x_mm=20.0)]
    assert faults("كل ABC", glyphs, shaper) == []


def test_a_foreign_font_shows_no_word(shaper: Shaper) -> None:
    """Glyph numbers of a font that is not shipped prove nothing."""
    foreign = [replace(glyph, font="Another-Sans") for glyph in set_line("كل", shaper)]
    assert faults("كل", foreign, shaper)


@pytest.mark.parametrize(
    ("shown", "expected"),
    [
        ("A صندوق كل B بحر صندوق كل", []),
        ("A كل صندوق B بحر صندوق كل", ["the words stand in another order"]),
        ("A صندوق كل B بحر كل صندوق", ["the words stand in another order"]),
    ],
    ids=["in order", "the first turned round", "the second turned round"],
)
def test_words_may_come_again_in_another_stretch(
    shaper: Shaper, shown: str, expected: list[str]
) -> None:
    """A title from the right may be named twice in an English line, as before and after."""
    glyphs = [
        replace(glyph, origin=Point(glyph.origin.x_mm + 10.0 * number, glyph.origin.y_mm))
        for number, word in enumerate(shown.split())
        for glyph in set_line(word, shaper, LATIN if word.isascii() else ARABIC)
    ]
    assert faults("A كل صندوق B كل صندوق بحر", glyphs, shaper) == expected


def test_words_may_come_again_in_a_line_from_the_right(shaper: Shaper) -> None:
    """Latin words named twice among Arabic ones stand from the right, stretch by stretch."""
    shown = ["A", "C", "كل", "A", "B"]
    glyphs = [
        replace(glyph, origin=Point(glyph.origin.x_mm + 10.0 * number, glyph.origin.y_mm))
        for number, word in enumerate(shown)
        for glyph in set_line(word, shaper, LATIN if word.isascii() else ARABIC)
    ]
    assert faults("A B كل A C", glyphs, shaper) == []
