from __future__ import annotations

import pytest

from service.errors import UnknownStockError
from service.geometry import Size
from service.sheets.stock import Medium
from service.sheets.stocks import A5, A6, STOCKS, find_stock, stocks_for


def test_names_are_unlike() -> None:
    """No two stocks share a name, however it is typed."""
    names = {stock.name.casefold() for stock in STOCKS}
    assert len(names) == len(STOCKS) == 54


@pytest.mark.parametrize("typed", ["A4 3x7 63.5x38.1", " a4  3X7 63.5x38.1 "])
def test_finds_a_stock_as_typed(typed: str) -> None:
    """Capitals and blanks do not matter when a stock is asked for."""
    assert find_stock(typed, STOCKS).name == "A4 3x7 63.5x38.1"


def test_says_which_stocks_there_are() -> None:
    """A name nobody knows is answered with those that are known."""
    with pytest.raises(UnknownStockError) as trouble:
        find_stock("A4 3x7", STOCKS)
    assert trouble.value.known == tuple(stock.name for stock in STOCKS)


def test_offers_the_snuggest_first() -> None:
    """An A6 card goes on an A6 sheet or on a quarter of A4 before it goes on a whole A4."""
    names = [stock.name for stock in stocks_for(A6, Medium.CARD, STOCKS)]
    assert names[:2] == ["A6 card", "A4 card 4xA6"]
    assert "A4 card" in names


def test_offers_turned_places_too() -> None:
    """An upright A5 card goes on the half sheets, where it lies on its side."""
    assert "A4 card 2xA5" in {stock.name for stock in stocks_for(A5, Medium.CARD, STOCKS)}


def test_offers_nothing_for_the_impossible() -> None:
    """A page larger than every sheet fits none."""
    assert stocks_for(Size(300, 300), Medium.CARD, STOCKS) == ()


def test_keeps_to_the_medium() -> None:
    """Sticky stock is never offered for a card."""
    offered = stocks_for(A6, Medium.CARD, STOCKS)
    assert {stock.medium for stock in offered} == {Medium.CARD}


def test_rolls_are_single_labels() -> None:
    """On a roll each label is a page of its own, sticky, with a narrow unprintable edge."""
    rolls = [stock for stock in STOCKS if stock.name.startswith("Roll")]
    assert len(rolls) == 6
    for roll in rolls:
        assert (roll.positions, roll.page, roll.medium) == (1, roll.label, Medium.STICKY)
        assert roll.edge_mm == 1.5
