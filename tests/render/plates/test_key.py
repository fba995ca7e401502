"""Tests for the names of plates."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Size
from service.pages.page import Page, Shade, ShapeBlock
from service.render.plates.key import plate_key
from service.render.plates.plate import PictureUse
from tests.render.made import PHOTO, mark, page, photo, symbol, text

WHOLE = page(text("Brass gauge"), photo(), mark(), symbol(), ShapeBlock("rule", text("x").rect))
USE = PictureUse("a" * 64, 120, 90)


def test_equal_pages_have_one_name() -> None:
    """A page made again of equal values is the same plate."""
    again = replace(WHOLE, blocks=tuple(replace(block) for block in WHOLE.blocks))
    assert plate_key(WHOLE, "f", {PHOTO: USE}) == plate_key(again, "f", {PHOTO: USE})


@pytest.mark.parametrize(
    "other",
    [
        replace(WHOLE, size=Size(100.0, 61.0)),
        replace(WHOLE, kind="end-label"),
        replace(WHOLE, blocks=WHOLE.blocks[1:]),
        replace(WHOLE, blocks=WHOLE.blocks[::-1]),
        *(
            replace(WHOLE, blocks=(*WHOLE.blocks[:place], changed, *WHOLE.blocks[place + 1 :]))
            for place, changed in (
                (0, text("Brass gauges")),
                (0, replace(text("Brass gauge"), whole="Brass gauge and case")),
                (0, text("Brass gauge", x_mm=5.001)),
                (0, text("Brass gauge", size_pt=10.1)),
                (1, replace(photo(), alt="another block")),
                (2, replace(mark(), mark="fragile")),
                (3, symbol("B-043")),
                (4, ShapeBlock("rule", text("x").rect, Shade.BLACK)),
            )
        ),
    ],
)
def test_whatever_shows_changes_the_name(other: Page) -> None:
    """Every difference on the page or in its words is another plate."""
    assert plate_key(other, "f", {PHOTO: USE}) != plate_key(WHOLE, "f", {PHOTO: USE})


def test_frame_and_photo_change_the_name() -> None:
    """Other templates, another photo of the same name, or none are other plates."""
    names = {
        plate_key(WHOLE, "f", {PHOTO: USE}),
        plate_key(WHOLE, "g", {PHOTO: USE}),
        plate_key(WHOLE, "f", {PHOTO: replace(USE, sha256="b" * 64)}),
        plate_key(WHOLE, "f", {}),
    }
    assert len(names) == 4


def test_container_and_place_in_the_run_do_not() -> None:
    """What is not printed, such as the page's count, names no plate."""
    other = replace(WHOLE, container_number="B-043", number=2, of=3)
    assert plate_key(WHOLE, "f", {}) == plate_key(other, "f", {})
