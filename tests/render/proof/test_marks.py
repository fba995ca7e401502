from __future__ import annotations

import pytest

from service.errors import ProofFailedError
from service.render.proof.faces import prove_plates
from service.render.proof.marks import MarkProof
from service.render.reading.fonts import shipped_fonts
from tests.render.made import mark, page
from tests.render.proof.plated import FONTS, MARKS, plate_of

SHIPPED = tuple(shipped_fonts(FONTS).items())


def test_a_drawing_that_shows_something_is_sound() -> None:
    """A filled triangle is a mark; it is looked at once and never again."""
    proof = MarkProof(SHIPPED)
    assert proof.faults(["caution"], MARKS) == {}
    assert proof.faults(["caution", "caution"], MARKS) == {}


@pytest.mark.parametrize(
    "drawing",
    [
        pytest.param(b"", id="nothing"),
        pytest.param(b"1 g 0 0 1 1 re f", id="in paper colour"),
        pytest.param(b"0 g 2 2 1 1 re f", id="beside its box"),
        pytest.param(b"0 g 0.5 0.5 0.05 0.05 re f", id="a speck"),
    ],
)
def test_an_empty_drawing_is_told(drawing: bytes) -> None:
    """A mark that shows nothing fails every plate that has it, and is looked at again next time."""
    proof = MarkProof(SHIPPED)
    marks = {**MARKS, "caution": drawing}
    for _ in range(2):
        told = proof.faults(["fragile", "caution"], marks)
        assert list(told) == ["caution"]
        assert "the drawing of the mark caution shows" in told["caution"]
    whole = page(mark())
    (result,) = prove_plates([plate_of(whole)], [whole], marks, fonts_folder=FONTS)
    assert isinstance(result, ProofFailedError)
