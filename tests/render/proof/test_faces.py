from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from service.errors import ProofFailedError
from service.geometry import Size
from service.pages.page import Block
from service.render.plates.plate import Plate, PlateProof
from service.render.proof.faces import prove_plates
from tests.render.made import mark, page, photo, symbol, text, without
from tests.render.proof.plated import FONTS, MARKS, faults_in, faults_of, plate_of, rewritten

BLOCKS = (text("B-042 Brass and glass"), symbol(), photo(), mark())
WHOLE = page(*BLOCKS)


def test_a_plate_that_says_what_it_should_is_proved() -> None:
    """The proof counts what it read back, and tells how far ink reaches, to a dot."""
    (proof,) = prove_plates([plate_of(WHOLE)], [WHOLE], MARKS, fonts_folder=FONTS)
    assert isinstance(proof, PlateProof)
    assert (proof.lines, proof.symbols, proof.pictures, proof.marks) == (1, 1, 1, 1)
    inner_mm = 4 * 0.5
    assert proof.ink.x_mm == pytest.approx(5.0, abs=0.4)
    assert proof.ink.right_mm == pytest.approx(symbol().rect.right_mm - inner_mm, abs=0.4)
    assert proof.ink.bottom_mm == pytest.approx(symbol().rect.bottom_mm - inner_mm, abs=0.4)


@pytest.mark.parametrize("block", BLOCKS, ids=lambda block: type(block).__name__)
def test_anything_left_out_is_caught(block: Block) -> None:
    """A text, symbol, photo or mark that the page asks for and the plate lacks fails the proof."""
    faults = faults_of(without(WHOLE, block), WHOLE)
    assert faults
    assert all(fault.startswith("lid-card B-042, 1/1: ") for fault in faults)


@pytest.mark.parametrize("block", BLOCKS, ids=lambda block: type(block).__name__)
def test_anything_too_many_is_caught(block: Block) -> None:
    """A text, symbol, photo or mark that no block asks for fails the proof."""
    assert "no block asks for" in " ".join(faults_of(WHOLE, without(WHOLE, block)))


def test_every_fault_is_told() -> None:
    """Nothing hides behind the first fault: three losses give three sentences or more."""
    faults = " ".join(faults_of(page(mark()), WHOLE))
    assert "Brass and glass" in faults
    assert "QR symbol" in faults
    assert "front.jpg" in faults


@pytest.mark.parametrize(
    "damage",
    [
        pytest.param(lambda plate: replace(plate, content=b"none"), id="no stream"),
        pytest.param(lambda plate: replace(plate, marks=("no-such-mark",)), id="no such mark"),
        pytest.param(
            lambda plate: replace(plate, fonts=(replace(plate.fonts[0], font=99),)),
            id="no such font",
        ),
        pytest.param(
            lambda plate: rewritten(plate, lambda content: content.replace(b">] TJ", b"0>] TJ")),
            id="half a code",
        ),
        pytest.param(lambda plate: rewritten(plate, lambda _: b""), id="nothing in it"),
    ],
)
def test_one_bad_plate_never_stops_the_others(damage: Callable[[Plate], Plate]) -> None:
    """Each plate gets a result of its own, whatever is wrong with its neighbour."""
    good = plate_of(WHOLE)
    first, bad, last = prove_plates(
        [good, damage(good), good], [WHOLE] * 3, MARKS, fonts_folder=FONTS
    )
    assert isinstance(bad, ProofFailedError)
    assert isinstance(first, PlateProof)
    assert first == last


def test_another_size_is_caught() -> None:
    """A face a twentieth of a millimetre too wide is not the face that was asked for."""
    drawn = page(text("B-042"), size=Size(100.05, 60.0))
    assert "100.05 x 60.00 mm large" in " ".join(faults_of(drawn, page(text("B-042"))))


def test_a_sign_no_font_has_is_caught() -> None:
    """An Ethiopic letter, which no shipped font holds, prints as glyph 0 and is told."""
    whole = page(text("B-042 \u1200"))
    assert "an empty box stands for a sign no font has" in " ".join(faults_of(whole))


def test_a_glyph_that_would_not_travel_is_caught() -> None:
    """A font is cut down to the glyphs that the plates list, so each must be listed."""
    plate = plate_of(page(text("B-042")))
    (use,) = plate.fonts
    short = replace(plate, fonts=(replace(use, glyphs=use.glyphs[:-2], texts=use.texts[:-1]),))
    assert "left out of the list" in " ".join(faults_in(short, page(text("B-042"))))


@pytest.mark.parametrize(
    "addition",
    [
        pytest.param(b" 0 0 100 100 re W n", id="a clip"),
        pytest.param(b" /G0 gs", id="a transparency"),
        pytest.param(b" /Sh0 sh", id="a shading"),
        pytest.param(b" BT 3 Tr /F0 10 Tf [<0001>] TJ ET", id="text in a way of its own"),
        pytest.param(b" q 0 1 -1 0 0 0 cm /P0 Do Q", id="something turned"),
    ],
)
def test_whatever_is_not_known_is_caught(addition: bytes) -> None:
    """The proof passes over nothing: operators that plates have no use for are told."""
    plate = rewritten(plate_of(WHOLE), lambda content: content + addition)
    assert "which the proof does not know" in " ".join(faults_in(plate, WHOLE))
