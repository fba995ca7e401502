from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Rect
from service.pages.page import Block, Shade, ShapeBlock
from service.render.proof.text import is_shaped, lines_of, plain
from tests.render.made import Ink, faults_of, from_the_right, page, text

LINES = {
    "digits, ligatures, hyphen at the end": text("1987.412.9 office find fjord re-"),
    "Welsh": text("Llestr ŵyl, tŷ dŵr"),
    "Polish": text("Łódź, część źródeł, ćwiek"),
    "Greek": text("Κουτιά στο ράφι"),
    "Vietnamese": replace(text("Mọi người, chiếc hộp"), language="vi"),
    "Japanese": replace(text("この箱は重い 12 kg"), language="ja"),
    "marks without a letter of their own": text("q\u0301 x\u0307 B-042"),
    "Arabic with marks": from_the_right("كلُّ صندوقٍ ثقيل", language="ar"),
    "Arabic with figures and Latin": from_the_right("صندوق B-042 (12.5 kg)", language="ar"),
    "Hebrew with points": from_the_right("כָּל אַרְגָּז כָּבֵד", language="he"),
    "Devanagari": replace(text("यह सन्दूक भारी है, क्षत्रिय"), language="hi"),
}


@pytest.mark.print
@pytest.mark.slow
def test_lines_in_all_scripts_are_proved(ink: Ink) -> None:
    """One page with a line of each script reads back without a fault."""
    lines = enumerate(LINES.values())
    whole = page(*(replace(one, rect=one.rect.moved(0.0, 5.0 * n - 2.0)) for n, one in lines))
    assert faults_of(ink.of(whole), whole) == []


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.parametrize(
    ("drawn", "wanted"),
    [
        pytest.param("B-041", "B-042", id="another number"),
        pytest.param("B-04", "B-042", id="a figure missing"),
        pytest.param("B-042 x", "B-042", id="a letter too many"),
        pytest.param("12 3", "123", id="a blank too many"),
        pytest.param("Zazolc", "Zażółć", id="marks lost"),
    ],
)
def test_another_text_is_caught(ink: Ink, drawn: str, wanted: str) -> None:
    """What is printed must be the line, sign by sign."""
    assert faults_of(ink.of(page(text(drawn))), page(text(wanted)))


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.parametrize(
    ("drawn", "wanted", "language"),
    [
        pytest.param("صندوقٍ كلُّ", "كلُّ صندوقٍ", "ar", id="words exchanged"),
        pytest.param("كلُ صندوقٍ", "كلُّ صندوقٍ", "ar", id="a mark lost"),
        pytest.param("كلُّ", "كلُّ صندوقٍ", "ar", id="a word lost"),
        pytest.param("كلُّ صندوقٍ", "كلُّ", "ar", id="a word too many"),
        pytest.param("ك ل", "كل", "ar", id="letters not joined"),
        pytest.param("כל", "כָּל", "he", id="points lost"),
    ],
)
def test_shaped_text_set_wrongly_is_caught(
    ink: Ink, drawn: str, wanted: str, language: str
) -> None:
    """Scripts that are shaped are compared glyph by glyph with a shaper of our own."""
    pdf = ink.of(page(from_the_right(drawn, language=language)))
    faults = faults_of(pdf, page(from_the_right(wanted, language=language)))
    assert "is not printed there" in " ".join(faults)


@pytest.mark.print
@pytest.mark.slow
def test_text_beyond_its_rectangle_is_caught(ink: Ink) -> None:
    """A line longer than its space reaches where the page did not ask for it."""
    block = text("Brass and glass and more of it")
    narrow = replace(block, rect=replace(block.rect, width_mm=20.0))
    faults = " ".join(faults_of(ink.of(page(block)), page(narrow)))
    assert "is not printed there" in faults
    assert "printed where no block asks for it" in faults


@pytest.mark.print
@pytest.mark.slow
def test_more_lines_than_the_rectangle_holds_are_caught(ink: Ink) -> None:
    """The layout engine lets a fifth line run out of its box without a word; the proof does not."""
    one = text("first")
    block = replace(one, lines=("first", "second", "third"))
    assert "'secondthird'" in " ".join(faults_of(ink.of(page(block)), page(one)))


@pytest.mark.print
@pytest.mark.slow
def test_text_over_text_is_caught(ink: Ink) -> None:
    """Two blocks in one place are told, although each of them reads back."""
    whole = page(text("Brass"), text("Glass", x_mm=6.0))
    assert "printed over each other" in " ".join(faults_of(ink.of(whole), whole))


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.parametrize(
    "block",
    [
        pytest.param(text("1 of 2", x_mm=50.0), id="beside"),
        pytest.param(text("1 of 2", x_mm=50.0, y_mm=6.0, size_pt=7.0), id="beside, lower"),
    ],
)
def test_blocks_may_share_a_line(ink: Ink, block: Block) -> None:
    """A short text in a wide rectangle leaves room for another beside it."""
    whole = page(text("B-042"), block)
    assert faults_of(ink.of(whole), whole) == []


@pytest.mark.print
@pytest.mark.slow
def test_text_nobody_can_see_is_caught(ink: Ink) -> None:
    """White letters on white paper, and letters under a panel, are in the file but not in print."""
    block = text("Brass")
    white = replace(block, style=replace(block.style, shade=Shade.WHITE))
    panel = ShapeBlock("panel", Rect(4.0, 4.0, 30.0, 8.0), fill=Shade.BLACK)
    for drawn in (page(white), page(block, panel)):
        assert "not to be seen" in " ".join(faults_of(ink.of(drawn), page(block)))


@pytest.mark.parametrize(
    ("line", "shaped"),
    [
        pytest.param("B-042 Łódź", False, id="Latin"),
        pytest.param("e\u0301", False, id="a mark with a letter of its own"),
        pytest.param("q\u0301", True, id="a mark without"),
        pytest.param("كل", True, id="Arabic"),
        pytest.param("כל", True, id="Hebrew"),
        pytest.param("भारी", True, id="Devanagari"),
        pytest.param("この箱", False, id="Japanese"),
    ],
)
def test_scripts_that_are_shaped(line: str, *, shaped: bool) -> None:
    """Only what reads back wrongly goes the longer way."""
    assert is_shaped(line) is shaped


def test_one_spelling() -> None:
    """Kinds of hyphen, blanks and invisible signs make no difference."""
    assert plain("e\u0301\u00a0 a\u2010b\u200b\x02") == plain("é a-b-")


def test_lines_stand_below_each_other() -> None:
    """Each line has a band one line pitch high; empty ones are left out."""
    block = replace(text("a"), lines=("a", "", "b"))
    tops_mm = [line.rect.y_mm for line in lines_of([block])]
    assert tops_mm == pytest.approx([5.0, 5.0 + 2 * block.style.leading_mm])
