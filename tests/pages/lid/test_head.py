from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.compose.lid_card import compose_lid_card
from service.cards.parts import Head
from service.geometry import Rect
from service.legibility import LEAST_ANGLE_ARCMIN, cap_height_mm
from service.pages.lid.head import HeadText, set_head
from service.pages.look import look_for
from service.pages.page import Block, SymbolBlock, TextBlock
from service.pages.setting.type import caps_mm
from service.pages.symbol import dark_part
from tests.contents.made import A5, A6, MUSEUM, objects, packing
from tests.pages.fake_ruler import FakeRuler

RULER = FakeRuler()
AREA = Rect(6.5, 6.5, 135.0, 0)
TEXT = HeadText(("9 objects",), "card 1 of 2")
HEAD = compose_lid_card(packing(objects(1)), MUSEUM).head


def set_on(head: Head, text: HeadText = TEXT, *, width_mm: float = 135.0) -> dict[str, Block]:
    """Set a head and give its blocks by purpose."""
    look = look_for(A5 if width_mm > 100 else A6)
    area = replace(AREA, width_mm=width_mm)
    return {block.purpose: block for block in set_head(RULER, head, text, area, look)}


def lines(block: Block) -> tuple[str, ...]:
    """Give the lines of a text."""
    assert isinstance(block, TextBlock)
    return block.lines


def test_a_head_names_the_container_and_its_state() -> None:
    """Number, kind, title, count, museum, revision with letters and part all stand there."""
    found = set_on(HEAD)
    assert lines(found["container-number"]) == ("B-042",)
    assert lines(found["revision"]) == (f"r3 {HEAD.check_letters}",)
    assert lines(found["part"]) == ("card 1 of 2",)
    assert set(found) >= {"kind", "title", "count", "museum", "symbol", "rule"}


def test_the_rule_closes_the_head() -> None:
    """Everything stands above the rule, which is as wide as the area."""
    found = set_on(HEAD)
    rule = found.pop("rule").rect
    symbol = found.pop("symbol")
    assert isinstance(symbol, SymbolBlock)
    assert dark_part(symbol).bottom_mm < rule.y_mm
    assert all(block.rect.bottom_mm < rule.y_mm for block in found.values())
    assert (rule.x_mm, rule.width_mm) == (6.5, 135.0)


@pytest.mark.parametrize(
    "number", ["B-042", "PM-STORE-2026-0042", "PM.STORE.2026.0000042.LARGE", "ABCDEFGHIJKLMNOP"]
)
@pytest.mark.parametrize("width_mm", [94.0, 135.0], ids=["A6", "A5"])
def test_the_number_is_read_from_a_step_away(number: str, width_mm: float) -> None:
    """However long, it is whole and its capitals are as NUREG-0700 asks at 1.5 m at least."""
    block = set_on(replace(HEAD, container_number=number), width_mm=width_mm)["container-number"]
    assert isinstance(block, TextBlock)
    assert "".join(block.lines) == number
    least_mm = cap_height_mm(1500.0, angle_arcmin=LEAST_ANGLE_ARCMIN)
    assert caps_mm(block.style.size_pt) >= least_mm - 1e-6


def test_a_title_goes_below_a_long_number() -> None:
    """Where the column beside the number would be too narrow, the title stands below."""
    beside = set_on(HEAD)
    below = set_on(replace(HEAD, container_number="PM-STORE-2026"), width_mm=94.0)
    assert beside["title"].rect.x_mm > beside["container-number"].rect.right_mm
    assert below["title"].rect.x_mm == AREA.x_mm
    assert below["title"].rect.y_mm >= below["container-number"].rect.bottom_mm


def test_what_is_not_known_takes_no_room() -> None:
    """No title, museum, location or part leave no empty lines."""
    bare = replace(HEAD, title="", museum="")
    assert not {"title", "museum", "part"} & set(set_on(bare, HeadText(("9 objects",), "")))
