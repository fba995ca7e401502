from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest

from service.cards.changes.change import Urgency
from service.cards.swap_list import SwapList, SwapRow
from service.errors import DoesNotFitError
from service.geometry import Size
from service.pages.page import Page, ShapeBlock, TextBlock
from service.pages.swap_list.fit import fit_swap_list
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


@pytest.mark.parametrize("size", [A4, LETTER], ids=["A4", "Letter"])
def test_no_row_is_divided(size: Size) -> None:
    """As many rows end on each page as begin there, each with its boxes above its rule."""
    for page in fit_swap_list(made(40), size, RULER):
        purposes = Counter(block.purpose for block in page.blocks)
        assert purposes["container-number"] == purposes["where"] == purposes["row-rule"]
        assert purposes["reason"] == purposes["tick-box"] == 2 * purposes["row-rule"]


def test_a_row_that_no_page_holds_goes_on() -> None:
    """A box packed anew has a reason an object: each is told once, in rows that name the card."""
    pages = fit_swap_list(made(1, reasons=200), A4, RULER)
    told = texts(pages, "reason")
    assert told == list(made(1, reasons=200).rows[0].reasons)
    cards = texts(pages, "card")
    assert cards == [
        f"End label, side 1 (part {number} of {len(cards)})" for number in range(1, len(cards) + 1)
    ]
    assert set(texts(pages, "container-number")) == {"B-000"}
    assert texts(pages, "page")[0] == f"1 card · page 1 of {len(pages)}"
    boxes = [block for page in pages for block in page.blocks if block.purpose == "tick-box"]
    assert len(boxes) == 2


def test_one_reason_that_no_page_holds_is_told() -> None:
    """It is neither divided nor cut."""
    rows = (replace(made(1).rows[0], reasons=("arsenic " * 2000,)),)
    with pytest.raises(DoesNotFitError):
        fit_swap_list(replace(made(1), rows=rows), A4, RULER)


def test_hidden_places_are_said_to_be_hidden() -> None:
    """Where the museum does not print locations every page says so, and how the list goes."""
    hidden = replace(made(40), hides_locations=True)
    pages = fit_swap_list(hidden, A4, RULER)
    words = ["Places are hidden: the list goes by container number."]
    assert texts(pages, "hidden") == words * len(pages)
    assert texts(fit_swap_list(made(1), A4, RULER), "hidden") == []
