from __future__ import annotations

import hashlib

import pytest

from service.geometry import Size
from service.pages.page import Block
from service.render.proof.faces import prove_faces
from tests.render.made import FONTS, Ink, faults_of, mark, page, photo, symbol, text, without

pytestmark = [pytest.mark.print, pytest.mark.slow]

BLOCKS = (text("B-042 Brass and glass"), symbol(), photo(), mark())
WHOLE = page(*BLOCKS)


def test_a_face_that_says_what_it_should_is_proved(ink: Ink) -> None:
    """The proof counts what it read back and keeps the hash of the file."""
    pdf = ink.of(WHOLE, WHOLE)
    proof = prove_faces(pdf, [WHOLE, WHOLE], fonts_folder=FONTS)
    counts = (proof.faces, proof.lines, proof.symbols, proof.pictures, proof.marks)
    assert counts == (2, 2, 2, 2, 2)
    assert proof.sha256 == hashlib.sha256(pdf).hexdigest()


@pytest.mark.parametrize("block", BLOCKS, ids=lambda block: type(block).__name__)
def test_anything_left_out_is_caught(ink: Ink, block: Block) -> None:
    """A text, symbol, photo or mark that the page asks for and the file lacks fails the proof."""
    faults = faults_of(ink.of(without(WHOLE, block)), WHOLE)
    assert faults
    assert all(fault.startswith("page 1 (lid-card B-042, 1/1): ") for fault in faults)


def test_every_fault_is_told(ink: Ink) -> None:
    """Nothing hides behind the first fault: three losses give three sentences or more."""
    faults = " ".join(faults_of(ink.of(page(mark())), WHOLE))
    assert "Brass and glass" in faults
    assert "QR symbol" in faults
    assert "front.jpg" in faults


def test_a_missing_page_is_caught(ink: Ink) -> None:
    """The file has as many pages as there are faces."""
    assert faults_of(ink.of(WHOLE), WHOLE, WHOLE) == ["the file has 1 pages instead of 2"]


def test_another_size_is_caught(ink: Ink) -> None:
    """A face a twentieth of a millimetre too wide is not the face that was asked for."""
    drawn = page(text("B-042"), size=Size(100.05, 60.0))
    assert "100.05 x 60.00 mm large" in " ".join(faults_of(ink.of(drawn), page(text("B-042"))))


def test_a_sign_no_font_has_is_caught(ink: Ink) -> None:
    """An Ethiopic letter, which no shipped font holds, prints as glyph 0 and is told."""
    pdf = ink.of_html("<div style='left: 5mm; top: 5mm; font-size: 10pt'>B-042 \u1200</div>")
    assert "an empty box stands for a sign no font has" in " ".join(
        faults_of(pdf, page(text("B-042 \u1200")))
    )
