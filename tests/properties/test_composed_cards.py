"""How full a lid card looks, measured: nothing crammed, no card mostly empty."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Size
from service.pages.page import Page, PictureBlock, SymbolBlock, TextBlock
from service.records.record import PhotoReference
from tests.contents.made import A4, A5, A6, objects, packing
from tests.pages.made import PLAIN, lid_pages

LEAST_SHARE, MOST_SHARE = 0.25, 0.85
"""Picture and text over the whole card: below it looks forgotten, above crammed (common practice,
no source)."""


def _filled_ratio(page: Page) -> float:
    """Give the share of a page that is picture, symbol or line of text."""
    filled_mm2 = 0.0
    for block in page.blocks:
        if isinstance(block, PictureBlock | SymbolBlock):
            filled_mm2 += block.rect.width_mm * block.rect.height_mm
        elif isinstance(block, TextBlock):
            widths = (PLAIN.width_mm(line, block.style) for line in block.lines)
            filled_mm2 += sum(widths) * block.style.leading_mm
    return filled_mm2 / (page.size.width_mm * page.size.height_mm)


@pytest.mark.parametrize("count", [1, 2, 9, 24, 60, 300])
@pytest.mark.parametrize("size", [A6, A5, A4], ids=["A6", "A5", "A4"])
def test_card_is_neither_empty_nor_crammed(count: int, size: Size) -> None:
    """Every card of a container looks composed, from one object to three hundred."""
    records = [replace(one, photos=(PhotoReference("a.jpg"),)) for one in objects(count)]
    shares = [_filled_ratio(page) for page in lid_pages(packing(records), size)]
    assert [share for share in shares if not LEAST_SHARE <= share <= MOST_SHARE] == []
