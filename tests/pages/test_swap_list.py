from __future__ import annotations

import pytest

from service.cards.changes.change import Urgency
from service.cards.swap_list import SwapList, SwapRow
from service.errors import DoesNotFitError
from service.geometry import Size
from service.pages.page import Page, ShapeBlock, TextBlock
from service.pages.swap_list import fit_swap_list
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF

A4, LETTER = Size(210.0, 297.0), Size(215.9, 279.4)
RULER = PangoRuler(FONTS_CONF)


def made(rows: int, *, reasons: int = 2) -> SwapList:
    """Give a list of so many rows, each with so many reasons."""
    each = tuple(
        SwapRow(
            f"B-{number:03}",
            ("Long Store", f"bay {number}"),
            "End label, side 1",
            "stuck on the base, short side",
            "r3 KMTF",
            "r4 BDFG",
            Urgency.HAZARD_OR_LIFT,
            tuple(f"hazard raised to confirmed: arsenic on 1987.412.{n}" for n in range(reasons)),
        )
        for number in range(rows)
    )
    return SwapList("Port Merrow Museum", "25 Nov 2026, Ada Quill", each)


def texts(pages: tuple[Page, ...], purpose: str) -> list[str]:
    """Give the whole texts of a purpose, page by page."""
    return [
        block.whole
        for page in pages
        for block in page.blocks
        if isinstance(block, TextBlock) and block.purpose == purpose
    ]


@pytest.mark.parametrize("size", [A4, LETTER], ids=["A4", "Letter"])
def test_every_row_is_there_once_and_whole(size: Size) -> None:
    """Forty cards take several pages; each has its boxes, its reasons and its page number."""
    pages = fit_swap_list(made(40), size, RULER)
    assert texts(pages, "container-number") == [f"B-{number:03}" for number in range(40)]
    assert len(texts(pages, "reason")) == 80
    assert texts(pages, "page") == [
        f"40 cards · page {number} of {len(pages)}" for number in range(1, len(pages) + 1)
    ]
    boxes = [
        block
        for page in pages
        for block in page.blocks
        if isinstance(block, ShapeBlock) and block.purpose == "tick-box"
    ]
    assert len(boxes) == 80
    assert all(box.rect.width_mm >= 5.0 for box in boxes)
    assert not any(
        block.is_shortened
        for page in pages
        for block in page.blocks
        if isinstance(block, TextBlock)
    )


def test_rows_stay_above_the_foot() -> None:
    """No row runs into the words on how to replace a card."""
    for page in fit_swap_list(made(40), A4, RULER):
        rows = [block.rect.bottom_mm for block in page.blocks if block.purpose == "row-rule"]
        how = [block.rect.y_mm for block in page.blocks if block.purpose == "how"]
        assert max(rows) < min(how)


def test_a_row_that_no_page_holds_is_told() -> None:
    """It is neither divided nor cut."""
    with pytest.raises(DoesNotFitError):
        fit_swap_list(made(1, reasons=90), A4, RULER)
