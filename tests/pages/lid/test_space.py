from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.compose.lid_card import compose_lid_card
from service.geometry import Size
from service.pages.lid.space import finish_page, make_space
from service.pages.page import MarkBlock, TextBlock
from service.pages.setting.stack import bottom_of
from tests.contents.made import A4, A5, A6, MUSEUM, hazard, objects, packing
from tests.pages.fake_ruler import FakeRuler

RULER = FakeRuler()
RECORD = replace(objects(1)[0], hazards=(hazard("lead"), hazard("mould")))
CARD = compose_lid_card(packing([RECORD]), MUSEUM)


@pytest.mark.parametrize("size", [A6, A5, A5.turned, A4])
@pytest.mark.parametrize("number", [1, 2])
def test_the_area_lies_between_head_and_foot(number: int, size: Size) -> None:
    """What stands above ends above the area, what stands below begins below it."""
    space = make_space(CARD, size, RULER, number=number, of=2)
    assert bottom_of(space.above) < space.area.y_mm
    assert min(block.rect.y_mm for block in space.below) > space.area.bottom_mm


def test_only_the_first_card_carries_the_whole_strip() -> None:
    """A further card has the marks and says where the words stand, and has more room."""
    first, second = (make_space(CARD, A5, RULER, number=number, of=2) for number in (1, 2))
    assert second.area.height_mm > first.area.height_mm
    said = [one.purpose for one in second.above if isinstance(one, TextBlock)]
    assert "reminder" in said
    assert "instruction" not in said
    marks = [one.mark for one in second.above if isinstance(one, MarkBlock)]
    assert marks == ["toxic", "biological"]


def test_a_page_reads_from_head_to_foot() -> None:
    """Contents stand between what is above and below, in the order of reading."""
    space = make_space(CARD, A5, RULER, number=1, of=1)
    page = finish_page(CARD, space, [])
    assert page.blocks == (*space.above, *space.below)
    assert (page.kind, page.number, page.of, page.size) == ("lid-card", 1, 1, A5)
    assert "part" not in {block.purpose for block in page.blocks}
