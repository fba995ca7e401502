from __future__ import annotations

from service.cards.parts import Warn
from service.geometry import Point
from service.pages.asked.tags import pair_rows, set_hole, set_warning
from service.pages.setting.rows import Row
from tests.pages.made import PLAIN

WARN = Warn("toxic", "Lead confirmed", "Gloves.")


def test_a_hole_stands_around_its_centre() -> None:
    """Half its width to each side."""
    rect = set_hole(Point(10.0, 6.0), 4.0).rect
    assert (rect.x_mm, rect.y_mm, rect.right_mm, rect.bottom_mm) == (8.0, 4.0, 12.0, 8.0)


def test_a_mark_has_its_words_beside_it() -> None:
    """A caution that says it all by name has no second line."""
    mark, heading, instruction = set_warning(PLAIN, WARN, 40.0, 8.0).blocks
    assert heading.rect.x_mm == instruction.rect.x_mm > mark.rect.right_mm
    assert heading.rect.bottom_mm == instruction.rect.y_mm
    assert len(set_warning(PLAIN, Warn("fragile", "Fragile"), 40.0, 8.0).blocks) == 2


def test_rows_stand_side_by_side() -> None:
    """Three rows in two columns are two, each as high as its highest."""
    rows = [Row(set_warning(PLAIN, WARN, 30.0, 8.0).blocks, height) for height in (5.0, 9.0, 7.0)]
    first, second = pair_rows(rows, 2, 32.0)
    assert (first.height_mm, second.height_mm) == (9.0, 7.0)
    assert first.blocks[3].rect.x_mm - first.blocks[0].rect.x_mm == 32.0
