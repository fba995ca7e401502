"""Tests for one row of the swap list."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.changes.change import Urgency
from service.geometry import Rect
from service.pages.page import Shade, ShapeBlock, TextBlock
from service.pages.swap_list.row import RowSet, set_rows, spell
from tests.pages.swap_list.test_fit import RULER, made

INSIDE = Rect(12.0, 12.0, 186.0, 273.0)
ROW = made(1).rows[0]


def set_one(number: str = "B-042", urgency: Urgency = Urgency.WORDING) -> RowSet:
    """Set one row with room to spare."""
    row = replace(ROW, container_number=number, urgency=urgency)
    (one,) = set_rows(RULER, row, INSIDE, room_mm=200.0)
    return one


def bars(row: RowSet) -> list[tuple[Shade | None, bool]]:
    """Give the bars of a row: their filling, and whether they are framed."""
    return [
        (block.fill, block.outline_mm > 0)
        for block in row.blocks
        if isinstance(block, ShapeBlock) and block.purpose == "urgency-bar"
    ]


@pytest.mark.parametrize(
    ("urgency", "expected"),
    [
        (Urgency.HAZARD_OR_LIFT, [(Shade.BLACK, False)]),
        (Urgency.CONTENTS, [(None, True)]),
        (Urgency.WORDING, []),
    ],
    ids=["hazard or lift", "contents", "wording"],
)
def test_urgency_is_marked_without_colour(
    urgency: Urgency, expected: list[tuple[Shade | None, bool]]
) -> None:
    """A black printer tells the three urgencies apart."""
    assert bars(set_one(urgency=urgency)) == expected


@pytest.mark.parametrize(
    ("number", "size_pt"),
    [("B-042", 15.0), ("PMM.STORE/2019-OVERFLOW.0001-REHOUSED-A", 11.0)],
    ids=["short", "long"],
)
def test_a_long_number_is_set_smaller(number: str, size_pt: float) -> None:
    """It stands whole; only its type gives way."""
    block = set_one(number).blocks[0]
    assert isinstance(block, TextBlock)
    assert block.style.size_pt == size_pt
    assert "".join(block.lines) == number


def test_a_sign_no_font_holds_is_spelled() -> None:
    """Its code stands for it, as on cards; one unprintable place must not stop the list."""
    assert spell(RULER, "Store \u16a0") == "Store [U+16A0]"
    assert spell(RULER, "Store 2") == "Store 2"


def test_what_is_packed_nowhere_is_named_by_its_object() -> None:
    """In the place of a container stands the number of the object; a packed one names its box."""
    tag = replace(ROW, card="Object tag of X.112", object_number="X.112")
    (packed,) = set_rows(RULER, tag, INSIDE, room_mm=200.0)
    (loose,) = set_rows(
        RULER, replace(tag, container_number="", location=()), INSIDE, room_mm=200.0
    )
    assert _said(packed)["container-number"] == ROW.container_number
    assert (_said(loose)["object-number"], _said(loose)["location"]) == ("X.112", "packed nowhere")
    assert _said(loose)["card"] == "Object tag of X.112"


def _said(row: RowSet) -> dict[str, str]:
    return {block.purpose: block.whole for block in row.blocks if isinstance(block, TextBlock)}
