from __future__ import annotations

from dataclasses import replace

import pytest

from service.pages.page import Block
from tests.render.made import from_the_right, page, text
from tests.render.proof.plated import faults_of

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


def test_lines_in_all_scripts_are_proved() -> None:
    """One page with a line of each script reads back without a fault."""
    lines = enumerate(LINES.values())
    whole = page(*(replace(one, rect=one.rect.moved(0.0, 5.0 * n - 2.0)) for n, one in lines))
    assert faults_of(whole) == []


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
def test_another_text_is_caught(drawn: str, wanted: str) -> None:
    """What is printed must be the line, sign by sign."""
    assert faults_of(page(text(drawn)), page(text(wanted)))


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
def test_shaped_text_set_wrongly_is_caught(drawn: str, wanted: str, language: str) -> None:
    """Scripts that are shaped are compared glyph by glyph with a shaper of our own."""
    faults = faults_of(
        page(from_the_right(drawn, language=language)),
        page(from_the_right(wanted, language=language)),
    )
    assert "is not printed there" in " ".join(faults)


def test_text_beyond_its_rectangle_is_caught() -> None:
    """A line longer than its space reaches where the page did not ask for it."""
    block = text("Brass and glass and more of it")
    narrow = replace(block, rect=replace(block.rect, width_mm=20.0))
    assert "reaches out of its place" in " ".join(faults_of(page(block), page(narrow)))


def test_more_lines_than_the_rectangle_holds_are_caught() -> None:
    """The layout engine lets a fifth line run out of its box without a word; the proof does not."""
    one = text("first")
    block = replace(one, lines=("first", "second", "third"))
    assert "'secondthird'" in " ".join(faults_of(page(block), page(one)))


def test_text_over_text_is_caught() -> None:
    """Two blocks in one place are told, although each of them reads back."""
    whole = page(text("Brass"), text("Glass", x_mm=6.0))
    assert "printed over each other" in " ".join(faults_of(whole))


@pytest.mark.parametrize(
    "block",
    [
        pytest.param(text("1 of 2", x_mm=50.0), id="beside"),
        pytest.param(text("1 of 2", x_mm=50.0, y_mm=6.0, size_pt=7.0), id="beside, lower"),
    ],
)
def test_blocks_may_share_a_line(block: Block) -> None:
    """A short text in a wide rectangle leaves room for another beside it."""
    whole = page(text("B-042"), block)
    assert faults_of(whole) == []


def test_a_large_overhanging_letter_is_no_fault() -> None:
    """A j of 24 pt reaches half a millimetre before its place, as its face draws it."""
    assert faults_of(page(text("jar", size_pt=24.0))) == []


def test_another_size_is_caught() -> None:
    """The right words set smaller than asked for are told."""
    drawn, wanted = text("B-042", size_pt=9.0), text("B-042", size_pt=10.0)
    assert "is set in another size" in " ".join(faults_of(page(drawn), page(wanted)))


def test_a_line_in_two_fonts_is_proved_piece_by_piece() -> None:
    """A sign that the first face lacks comes from another one, in the middle of a word too."""
    assert faults_of(page(text("Σφραγίδα λιμεναρχείου ☐ a→b"))) == []
    assert faults_of(page(text("λιμεναρχείου")), page(text("λιμεναρχείον")))
