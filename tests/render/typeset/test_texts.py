from __future__ import annotations

import pytest

from service.render.task import FONTS_CONF
from service.render.typeset.faces import Faces
from service.render.typeset.shaped import LineShaper
from service.render.typeset.texts import note_texts

SHAPER = LineShaper(FONTS_CONF)
FACES = Faces(FONTS_CONF, SHAPER)


def texts_of(text: str, *, is_right_to_left: bool = False) -> tuple[list[str], bool]:
    """Give what the glyphs stand for in the order of drawing, and whether that says it all."""
    raw = text.encode()
    SHAPER.shape_line(raw, size_px=16, weight=400, language="", is_right_to_left=is_right_to_left)
    said, is_plain = [], True
    for run in SHAPER.runs():
        texts: dict[int, str] = {}
        is_plain &= note_texts(FACES.face(run.font), run, raw, texts)
        said += [texts.get(number, "") for number in run.numbers]
    return said, is_plain


@pytest.mark.parametrize(
    "text", ["Brass, 1905", "gŵyl â thŷ", "x\u0301y", "Πυξίδα", "箱に", "\N{MICRO SIGN} ≤ 5 ½"]
)
def test_plain_text_is_said_sign_by_sign(text: str) -> None:
    """Where each glyph is one sign, read from left to right, nothing more is needed."""
    assert texts_of(text) == (list(text), True)


@pytest.mark.parametrize(
    ("text", "leftward"),
    [("कि", False), ("כוס", True), ("a\u200db", False)],
    ids=["a vowel set before", "leftward", "a joiner"],
)
def test_text_that_reads_otherwise_is_told(text: str, *, leftward: bool) -> None:
    """Several glyphs for a sign, or another order, or a sign that shows nothing, is not plain."""
    said, is_plain = texts_of(text, is_right_to_left=leftward)
    assert not is_plain
    assert sorted("".join(said)) == sorted(text.replace("\u200d", ""))


def test_a_letter_keeps_its_own_text_in_a_cluster() -> None:
    """Of the two glyphs the vowel says the vowel, so that other words are not spoilt."""
    assert texts_of("कि") == (["ि", "क"], False)


def test_leftward_glyphs_say_their_letters() -> None:
    """They are drawn from the left, the last letter first."""
    assert texts_of("כוס", is_right_to_left=True)[0] == list("סוכ")


def test_what_no_font_holds_is_said_by_the_glyph_for_it() -> None:
    """Glyph 0 stands for the character."""
    raw = "\U00012000".encode()
    SHAPER.shape_line(raw, size_px=16, weight=400, language="", is_right_to_left=False)
    (run,) = SHAPER.runs()
    texts: dict[int, str] = {}
    assert not note_texts(FACES.face(run.font), run, raw, texts)
    assert texts == {0: "\U00012000"}
