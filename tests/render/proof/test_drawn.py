from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Rect
from service.pages.page import Block, Shade, ShapeBlock
from tests.render.made import mark, page, photo, text
from tests.render.proof.plated import faults_in, faults_of, plate_of, rewritten


def test_a_photo_too_small_for_its_frame_is_caught() -> None:
    """A picture that fills half of its frame was placed by mistake."""
    small = replace(photo(), rect=Rect(5.0, 20.0, 15.0, 15.0))
    assert "front.jpg is not printed in its frame" in " ".join(
        faults_of(page(small), page(photo()))
    )


def test_a_photo_beside_its_frame_is_caught() -> None:
    """A picture moved by a millimetre leaves its frame."""
    moved = replace(photo(), rect=photo().rect.moved(1.0, 0.0))
    assert "not printed in its frame" in " ".join(faults_of(page(moved), page(photo())))


def test_a_stretched_photo_is_caught() -> None:
    """A picture has the proportions of its file: 4 to 3 does not fill a square."""
    square = b"q 85.039 0 0 85.039 14.173 28.346 cm /P0 Do Q"
    plate = rewritten(plate_of(page(photo())), lambda _: square)
    assert "front.jpg is stretched" in " ".join(faults_in(plate, page(photo())))


def test_a_frame_without_photo_needs_none() -> None:
    """A record without a photo gets an empty frame, which is no fault."""
    assert faults_of(page(replace(photo(), photo=""))) == []


def test_a_mark_that_is_not_drawn_is_caught() -> None:
    """The code and the place of a missing mark are told."""
    faults = " ".join(faults_of(page(text("B-042")), page(text("B-042"), mark())))
    assert "the mark caution is not printed at 45.0 mm from the left" in faults


@pytest.mark.parametrize(
    "other",
    [
        pytest.param(replace(mark(), mark="fragile"), id="another mark"),
        pytest.param(replace(mark(), rect=mark().rect.moved(0.0, 1.0)), id="elsewhere"),
        pytest.param(replace(mark(), rect=Rect(45.0, 20.0, 12.0, 12.0)), id="too small"),
        pytest.param(replace(mark(), rect=Rect(45.0, 20.0, 15.0, 10.0)), id="flat"),
    ],
)
def test_a_mark_drawn_wrongly_is_caught(other: Block) -> None:
    """The right mark in its own place and size, or it is a fault."""
    faults = " ".join(faults_of(page(other), page(mark())))
    assert "the mark caution is not printed" in faults
    assert "no block asks for" in faults


@pytest.mark.parametrize("block", [photo(), mark()], ids=["photo", "mark"])
@pytest.mark.parametrize(
    "over",
    [
        pytest.param(text("B-042", x_mm=10.0, y_mm=30.0), id="text"),
        pytest.param(ShapeBlock("", Rect(10.0, 30.0, 45.0, 3.0), fill=Shade.WHITE), id="a patch"),
    ],
)
def test_whatever_stands_on_a_drawing_is_caught(block: Block, over: Block) -> None:
    """A photo or a mark is printed whole, with nothing over it."""
    moved = replace(over, rect=replace(over.rect, x_mm=block.rect.x_mm + 1.0))
    assert "is covered or printed over" in " ".join(faults_of(page(block, moved)))


def test_text_under_a_photo_is_caught() -> None:
    """A line that a photo covers is in the file but not in print."""
    covered = text("B-042", x_mm=10.0, y_mm=30.0)
    assert "not to be seen" in " ".join(faults_of(page(covered, photo())))
