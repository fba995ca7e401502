from __future__ import annotations

import pytest

from service.cards.parts import CardLayer, CardObject
from service.geometry import Rect, Size
from service.pages.lid.cells import SCALES
from service.pages.lid.contents_grid import Fit, set_grid
from service.pages.lid.grid import GridPlan, GridSpace
from service.pages.page import PictureBlock
from tests.pages.fake_ruler import FakeRuler

RULER = FakeRuler()
PLAN = GridPlan(2, 3, Size(50, 40), Size(30, 20), beside=False)
AREA = Rect(10, 20, 103.2, 130)


def item(number: str, cell: tuple[int, int] | None = None) -> CardObject:
    """Make an object, perhaps in a compartment."""
    return CardObject(number, "Pin", "1.jpg", "", cell=cell)


def corners(layers: list[CardLayer], *, heading_mm: float, fixed: bool) -> list[float]:
    """Give x and y of each picture's corner, one picture after the other."""
    space = GridSpace(AREA.size, 3.2, 2.4, heading_mm)
    blocks = set_grid(RULER, layers, AREA, Fit(PLAN, SCALES[-1], fixed), space)
    rects = [block.rect for block in blocks if isinstance(block, PictureBlock)]
    return [length_mm for rect in rects for length_mm in (rect.x_mm, rect.y_mm)]


def test_objects_fill_row_by_row_and_layers_begin_a_new_one() -> None:
    """Three objects take two rows; the next layer begins below, under its heading."""
    layers = [CardLayer("Top", (item("1"), item("2"), item("3"))), CardLayer("Next", (item("4"),))]
    found = corners(layers, heading_mm=5.6, fixed=False)
    assert found == pytest.approx([10, 25.6, 63.2, 25.6, 10, 68.0, 10, 116.0])


def test_a_fixed_grid_puts_each_object_into_its_compartment() -> None:
    """Column and row of the compartment decide, not the order."""
    layers = [CardLayer("", (item("1", (1, 2)), item("2", (0, 0))))]
    found = corners(layers, heading_mm=0, fixed=True)
    assert found == pytest.approx([63.2, 104.8, 10, 20])


def test_empty_compartments_are_outlined() -> None:
    """A map shows where nothing lies, too."""
    space = GridSpace(AREA.size, 3.2, 2.4)
    layers = [CardLayer("", (item("1", (0, 0)),))]
    blocks = set_grid(RULER, layers, AREA, Fit(PLAN, SCALES[-1], fixed=True), space)
    assert sum(block.purpose == "empty-compartment" for block in blocks) == 5
