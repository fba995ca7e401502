from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.parts import CardObject
from service.geometry import Point, Rect, Size
from service.pages.lid.cells import (
    SCALES,
    Scale,
    measure_captions,
    set_cell,
    set_picture,
    set_tag,
)
from service.pages.lid.grid import FLOOR_MM, GridPlan
from service.pages.page import MarkBlock, PictureBlock, Shade, TextBlock
from service.pages.setting.text import Spot
from service.pages.setting.type import LEAST_OBJECT_NUMBER_PT
from tests.pages.fake_ruler import FakeRuler

RULER = FakeRuler()
LEAST = SCALES[-1]
BUCKLE = CardObject("1987.412.9", "Brass buckle, cast", "9.jpg", "", place="B3")
MARKED = replace(BUCKLE, marks=(("toxic", "Lead confirmed"), ("do-not-fold", "Do not fold")))
ABOVE = GridPlan(2, 2, Size(50, 60), Size(40, 38), beside=False)
BESIDE = GridPlan(1, 4, Size(120, 30), Size(40, 30), beside=True)
CORNER = Point(10, 20)


@pytest.mark.parametrize("scale", SCALES)
def test_sizes_of_type_and_marks(scale: Scale) -> None:
    """No number is below its least height, and two marks fit beside the least picture."""
    assert scale.number_pt >= LEAST_OBJECT_NUMBER_PT - 1e-9
    assert scale.number.weight > scale.title.weight
    assert 2 * scale.mark_mm + 0.8 <= max(scale.least_picture_mm, FLOOR_MM)


def test_captions_need_the_room_of_the_longest_number() -> None:
    """A longer number widens every cell; what lies aside and marks take room of their own."""
    plain = measure_captions(RULER, [BUCKLE], LEAST)
    longer = replace(BUCKLE, object_number="1987.412.9000")
    assert measure_captions(RULER, [BUCKLE, longer], LEAST).width_mm > plain.width_mm
    aside = measure_captions(RULER, [replace(BUCKLE, aside="b in B-7")], LEAST)
    assert aside.height_mm == pytest.approx(plain.height_mm + LEAST.title.leading_mm)
    assert plain.marks_mm == 0
    assert measure_captions(RULER, [MARKED], LEAST).marks_mm > LEAST.mark_mm


def test_very_long_numbers_need_height_instead() -> None:
    """A number that would widen the cell too far breaks after its own signs."""
    plain = measure_captions(RULER, [BUCKLE], LEAST)
    longest = measure_captions(
        RULER, [replace(BUCKLE, object_number="1987.412." * 6 + "9", place="")], LEAST
    )
    assert longest.height_mm > plain.height_mm
    assert longest.width_mm < 50


def test_no_objects_need_little() -> None:
    """An empty list is measured without complaint."""
    assert measure_captions(RULER, [], LEAST).marks_mm == 0


@pytest.mark.parametrize("plan", [ABOVE, BESIDE], ids=["above", "beside"])
@pytest.mark.parametrize(
    "item",
    [BUCKLE, MARKED, replace(BUCKLE, aside="here: a; b in B-7"), replace(BUCKLE, place="")],
    ids=["plain", "marked", "parts elsewhere", "no place"],
)
def test_a_cell_holds_all_that_belongs_to_it(item: CardObject, plan: GridPlan) -> None:
    """Picture, tag, number, title and marks lie inside the cell and over nothing."""
    blocks = set_cell(RULER, item, CORNER, plan, LEAST)
    cell = Rect(CORNER.x_mm, CORNER.y_mm, plan.cell.width_mm, plan.cell.height_mm)
    assert all(cell.holds(block.rect, tolerance_mm=0.01) for block in blocks)
    picture = next(block for block in blocks if isinstance(block, PictureBlock))
    others = [block for block in blocks if isinstance(block, TextBlock | MarkBlock)]
    assert not any(picture.rect.overlaps(block.rect) for block in others)
    found = {block.purpose for block in blocks}
    assert ("aside" in found) is bool(item.aside)
    assert ("tag" in found) is bool(item.place)
    assert sum(block.purpose == "object-mark" for block in blocks) == len(item.marks)


def test_a_low_cell_keeps_its_title() -> None:
    """Where there is one line left, the title has it and what lies aside waits for the list."""
    low = replace(ABOVE, cell=Size(50, 48))
    blocks = set_cell(RULER, replace(BUCKLE, aside="b in B-7"), CORNER, low, LEAST)
    assert [block.purpose for block in blocks][-1] == "caption"


def test_a_missing_photo_says_why() -> None:
    """The frame stays, with the words in its middle."""
    item = replace(BUCKLE, photo="", photo_words="no photo yet")
    picture, words = set_picture(RULER, item, Rect(0, 0, 30, 20))
    assert isinstance(picture, PictureBlock)
    assert isinstance(words, TextBlock)
    assert (picture.photo, words.whole) == ("", "no photo yet")
    assert words.rect.y_mm + words.rect.height_mm / 2 == pytest.approx(10)


def test_a_picture_is_named_for_those_who_cannot_see_it() -> None:
    """The words behind a photo are number and title."""
    (picture,) = set_picture(RULER, BUCKLE, Rect(0, 0, 30, 20))
    assert isinstance(picture, PictureBlock)
    assert picture.alt == "1987.412.9: Brass buckle, cast"


def test_a_place_is_white_on_black() -> None:
    """The tag is one panel with the place in its middle; no place, no tag."""
    panel, words = set_tag(RULER, "B3", Spot(5, 5, 0), LEAST.number)
    assert isinstance(words, TextBlock)
    assert words.style.shade is Shade.WHITE
    assert panel.rect.width_mm == pytest.approx(words.rect.width_mm)
    assert words.rect.width_mm > RULER.width_mm("B3", words.style)
    assert set_tag(RULER, "", Spot(5, 5, 0), LEAST.number) == ()
