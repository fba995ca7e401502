from __future__ import annotations

from service.cards.kinds import CARD_KINDS
from service.pipeline.usual_stocks import TRIED
from service.sheets.stock import Medium
from service.sheets.stocks import STOCKS, find_stock


def test_each_kind_has_stocks_of_its_medium_on_both_papers() -> None:
    """What is stuck on is tried on sticky sheets, what is not on card (design of the cards)."""
    assert set(TRIED) == set(CARD_KINDS)
    for kind, by_paper in TRIED.items():
        assert set(by_paper) == {"A4", "Letter"}
        for names in by_paper.values():
            media = {find_stock(name, STOCKS).medium for name in names}
            assert media == {Medium.STICKY if kind.sticky else Medium.CARD}, kind
