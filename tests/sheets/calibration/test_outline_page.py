from __future__ import annotations

import pytest

from service.geometry import Rect
from service.pages.page import ShapeBlock, TextBlock
from service.sheets.calibration.outline_page import OUTLINE_MM, outline_page
from service.sheets.own_stock import parse_stock
from service.sheets.stock import Stock
from service.sheets.stocks import STOCKS
from tests.pages.fake_ruler import FakeRuler


@pytest.mark.parametrize("stock", STOCKS, ids=[stock.name for stock in STOCKS])
def test_every_label_has_its_outline_and_number(stock: Stock) -> None:
    """Four thin sides within each label, its number in it, and the words at most once."""
    page = outline_page(stock, FakeRuler())
    assert page.size == stock.page
    lines = [block.rect for block in page.blocks if isinstance(block, ShapeBlock)]
    labels = [stock.position_rect(position) for position in range(1, stock.positions + 1)]
    assert len(lines) == 4 * len(labels)
    for label in labels:
        inside = [line for line in lines if label.holds(line)]
        assert len([line for line in inside if line.width_mm == label.width_mm]) == 2
        assert len([line for line in inside if line.height_mm == label.height_mm]) == 2
        assert all(OUTLINE_MM in {line.width_mm, line.height_mm} for line in inside)
    texts = [block for block in page.blocks if isinstance(block, TextBlock)]
    told = [block for block in texts if "100" in block.whole and "%" in block.whole]
    assert len(told) <= 1
    assert all(any(label.holds(block.rect) for label in labels) for block in texts)
    numbers = [block.whole for block in texts if block not in told]
    assert numbers == [str(position) for position in range(1, stock.positions + 1)]


def test_labels_too_small_for_words_have_none() -> None:
    """Outlines alone still show whether the measures are right."""
    measures = {"name": "Dots", "page": "A4", "columns": 20, "rows": 20, "unit": "mm"}
    dots = parse_stock({**measures, "label_width": 7, "label_height": 7})
    page = outline_page(dots, FakeRuler())
    assert all(isinstance(block, ShapeBlock) for block in page.blocks)
    assert isinstance(page.blocks[0].rect, Rect)
