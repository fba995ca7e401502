from __future__ import annotations

import pytest

from service.geometry import Rect, Size
from service.pages.look import NEAREST_EDGE_MM, inner_rect, look_for
from tests.contents.made import A4, A5, A6, LETTER


@pytest.mark.parametrize("size", [A6, A5, A4], ids=["A6", "A5", "A4"])
def test_a_look_does_not_turn(size: Size) -> None:
    """Landscape and portrait of one size look alike."""
    assert look_for(size) == look_for(size.turned)


def test_larger_cards_have_larger_measures() -> None:
    """Number, title, symbol and margin grow with the card; letter paper looks like A4."""
    looks = [look_for(size) for size in (A6, A5, A4)]
    for name in ("margin_mm", "gap_mm", "symbol_mm", "title_pt", "number_caps_mm"):
        values = [getattr(look, name) for look in looks]
        assert values == sorted(set(values))
    assert look_for(LETTER) == looks[-1]


@pytest.mark.parametrize("size", [A6, A5, A4], ids=["A6", "A5", "A4"])
def test_margins_keep_off_the_unprintable_edge(size: Size) -> None:
    """Ink stays farther from the edge than office printers lose."""
    assert look_for(size).margin_mm >= NEAREST_EDGE_MM
    assert inner_rect(size, 5.0) == Rect(5, 5, size.width_mm - 10, size.height_mm - 10)
