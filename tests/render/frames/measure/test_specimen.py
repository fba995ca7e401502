from __future__ import annotations

from typing import get_args

import pytest

from service.geometry import Rect, Size
from service.pages.page import Shade, TextBlock
from service.render.frames.frame import Look, TextLook
from service.render.frames.looks import has_picture, look_of, looks_in
from service.render.frames.measure.specimen import (
    make_crowd,
    make_specimens,
    specimen_pages,
    specimen_pictures,
)
from tests.render.frames import made

SIZES = (Size(148.0, 105.0), Size(50.0, 20.0), Size(420.0, 297.0))


@pytest.mark.parametrize("size", SIZES, ids=["card", "label", "sheet"])
def test_specimens_have_their_look_and_stand_on_the_face(size: Size) -> None:
    """A specimen is of the look it stands for, and no larger than its face."""
    face = Rect(0, 0, size.width_mm, size.height_mm)
    for specimen in make_specimens(made.LOOKS, size):
        shown = has_picture(specimen.block, specimen_pictures())
        assert look_of(specimen.block, has_picture=shown) == specimen.look
        assert face.holds(specimen.block.rect)


def test_specimens_of_a_look_differ_in_all_else() -> None:
    """Each look is seen more than once, never twice at one place or in one way."""
    for look in made.LOOKS:
        blocks = [one.block for one in make_specimens([look], made.FACE)]
        assert len({block.rect for block in blocks}) == len(blocks) > 1
    texts = [one.block for one in make_specimens([made.TITLE], made.FACE)]
    styles = [block.style for block in texts if isinstance(block, TextBlock)]
    assert len({style.size_pt for style in styles}) == len(texts)
    assert len({style.align for style in styles}) == 3
    assert len({style.weight for style in styles}) == 3


def test_every_shade_can_be_a_look() -> None:
    """No tone of a card is without its specimen."""
    for shade in Shade:
        assert make_specimens([TextLook("x", shade.value)], made.FACE)


@pytest.mark.parametrize("size", SIZES, ids=["card", "label", "sheet"])
def test_a_crowd_has_room_for_all(size: Size) -> None:
    """Every look stands once among the others and covers none."""
    crowd = make_crowd(made.LOOKS, size)
    pages = specimen_pages(made.KIND, size, (), crowd)
    assert looks_in(pages, specimen_pictures()) == set(made.LOOKS)
    for number, block in enumerate(crowd):
        assert not any(block.rect.overlaps(other.rect) for other in crowd[:number])
    assert make_crowd([], size) == ()


def test_pages_begin_empty_and_end_with_the_crowd() -> None:
    """Page after page one specimen, between the two that are read otherwise."""
    specimens = make_specimens(made.LOOKS, made.FACE)
    crowd = make_crowd(made.LOOKS, made.FACE)
    pages = specimen_pages(made.KIND, made.FACE, specimens, crowd)
    assert [page.blocks for page in pages] == [
        (),
        *[(specimen.block,) for specimen in specimens],
        crowd,
    ]


def test_all_kinds_of_looks_are_tried_here() -> None:
    """A new kind of look must get its specimens."""
    assert {type(look) for look in made.LOOKS} == set(get_args(Look))
