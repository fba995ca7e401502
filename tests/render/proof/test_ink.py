from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Rect
from service.pages.page import Block, Shade, ShapeBlock
from service.render.proof.faces import prove_faces
from tests.render.made import FONTS, Ink, faults_of, mark, page, photo, text

pytestmark = [pytest.mark.print, pytest.mark.slow]


def test_a_photo_too_small_for_its_frame_is_caught(ink: Ink) -> None:
    """A picture that fills half of its frame was placed by mistake."""
    small = replace(photo(), rect=Rect(5.0, 20.0, 15.0, 15.0))
    faults = faults_of(ink.of(page(small)), page(photo()))
    assert "front.jpg is not printed in its frame" in " ".join(faults)


def test_a_photo_beside_its_frame_is_caught(ink: Ink) -> None:
    """A picture moved by a millimetre leaves its frame."""
    moved = replace(photo(), rect=photo().rect.moved(1.0, 0.0))
    assert "not printed in its frame" in " ".join(faults_of(ink.of(page(moved)), page(photo())))


def test_a_frame_without_photo_needs_none(ink: Ink) -> None:
    """A record without a photo gets an empty frame, which is no fault."""
    empty = page(replace(photo(), photo=""))
    assert faults_of(ink.of(empty), empty) == []


def test_a_mark_that_is_not_drawn_is_caught(ink: Ink) -> None:
    """The code and the place of a missing mark are told."""
    faults = " ".join(faults_of(ink.of(page(text("B-042"))), page(text("B-042"), mark())))
    assert "the mark caution is not printed at 45.0 mm from the left" in faults


@pytest.mark.parametrize(
    ("block", "fault"),
    [
        pytest.param(
            ShapeBlock("rule", Rect(50.0, 58.5, 20.0, 0.5), fill=Shade.BLACK),
            "ink stands within 2 mm of the edge",
            id="a rule in the strip",
        ),
        pytest.param(
            ShapeBlock("panel", Rect(90.0, 5.0, 12.0, 5.0), fill=Shade.BLACK),
            "reaches out of the page",
            id="a panel over the edge",
        ),
        pytest.param(
            text("1987.412.9 and its case", x_mm=80.0), "reaches out of the page", id="a long line"
        ),
    ],
)
def test_ink_at_the_edge_is_caught(ink: Ink, block: Block, fault: str) -> None:
    """Nothing is printed over the edge, nor in the strip where a die or a knife may slip."""
    whole = page(block)
    assert fault in " ".join(faults_of(ink.of(whole), whole))


def test_the_strip_is_as_wide_as_asked(ink: Ink) -> None:
    """A rule 1.5 mm from the edge passes where 1 mm is enough."""
    whole = page(ShapeBlock("rule", Rect(50.0, 58.0, 20.0, 0.5), fill=Shade.BLACK))
    assert faults_of(ink.of(whole), whole)
    proof = prove_faces(ink.of(whole), [whole], fonts_folder=FONTS, clear_edge_mm=1.0)
    assert proof.faces == 1
