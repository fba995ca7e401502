from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.compose.lid_card import ORIENTATION, compose_lid_card
from service.geometry import Rect
from service.pages.lid.foot import NOT_AN_ASSESSMENT, set_foot
from service.pages.page import TextBlock
from service.pages.setting.stack import bottom_of
from tests.contents.made import MUSEUM, objects, packing
from tests.pages.fake_ruler import FakeRuler

AREA = Rect(6.5, 6.5, 135.0, 197.0)
HEAD = compose_lid_card(packing(objects(1)), MUSEUM).head


def words(purpose: str, *, questions: str = "", packed: str = "", orientation: str = "") -> str:
    """Set a foot and give what the text of a purpose says."""
    head = replace(HEAD, questions=questions, packed=packed)
    blocks = set_foot(FakeRuler(), head, orientation, AREA)
    assert bottom_of(blocks) == pytest.approx(AREA.bottom_mm)
    found = [one for one in blocks if isinstance(one, TextBlock) and one.purpose == purpose]
    return found[0].whole if found else ""


def test_whom_to_ask_is_always_said() -> None:
    """Where nobody is named the card still says to ask."""
    assert words("questions", questions="Desk 214") == "Ask first: Desk 214"
    assert words("questions") == "Ask first: whoever keeps the records"


def test_a_card_is_no_assessment() -> None:
    """Every foot says so, with and without an edge to name."""
    assert words("disclaimer") == words("disclaimer", orientation=ORIENTATION) == NOT_AN_ASSESSMENT
    assert words("orientation", orientation=ORIENTATION) == f"▼ {ORIENTATION} ▼"
    assert not words("orientation")


def test_who_packed_stands_beside_whom_to_ask() -> None:
    """Both share a line; where nobody is named the question has it all."""
    assert words("packed", packed="Packed 14 Oct 2026") == "Packed 14 Oct 2026"
    assert not words("packed")


@pytest.mark.parametrize("width_mm", [94.0, 135.0, 192.0])
def test_room_for_the_pen(width_mm: float) -> None:
    """There are three lines for date and initials at least, each long enough to write on."""
    area = replace(AREA, width_mm=width_mm)
    blocks = set_foot(FakeRuler(), HEAD, ORIENTATION, area)
    pens = [block.rect for block in blocks if block.purpose == "pen-line"]
    assert len(pens) >= 3
    assert min(pen.width_mm for pen in pens) > 12
    assert max(pen.right_mm for pen in pens) == pytest.approx(area.right_mm)
