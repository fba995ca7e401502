from __future__ import annotations

from service.cards.kinds import CARD_KINDS
from service.pipeline.suit import name_kinds, suited_kinds
from service.pipeline.usual_stocks import TRIED
from service.sheets.stocks import STOCKS, find_stock


def named(stock: str) -> str:
    """Name the kinds that a stock suits."""
    return name_kinds(suited_kinds(find_stock(stock, STOCKS)))


def test_material_and_size_decide() -> None:
    """Sticky labels for what is stuck on, card for the rest; a postage stamp suits nothing."""
    assert named("A4 2x4 99.1x67.7") == "End label, Warning label"
    assert named("A4 card 4xA6") == "Lid card, Side card"
    assert named("A4 card 3x9 60x30") == "Object tag"
    assert named("A4 5x13 38.1x21.2") == ""
    assert "Contents list" in named("Letter card")


def test_each_kind_suits_the_stocks_that_are_tried_for_it() -> None:
    """What is chosen by itself is never advised against."""
    assert set(TRIED) == set(CARD_KINDS)
    for kind, papers in TRIED.items():
        for names in papers.values():
            for name in names:
                assert kind in suited_kinds(find_stock(name, STOCKS)), (kind.name, name)
