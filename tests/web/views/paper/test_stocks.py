from __future__ import annotations

import httpx

from service.sheets.stocks import STOCKS
from service.web.views.paper.stocks import GROUPS, group_of
from tests.web.views.opened import follow, send, show
from tests.web.views.paper.test_measure import DRAWN, MEASURES


def test_every_stock_is_shown_with_what_it_suits(client: httpx.Client) -> None:
    """Each with its name, its drawing and its test sheet; small enough for an old machine."""
    page = show(client, "/stocks")
    for stock in STOCKS:
        assert f"<h3>{stock.name}</h3>" in page
    assert page.count('class="stock-drawing"') == len(STOCKS)
    assert "End label, Warning label" in page
    assert "/stocks/test-sheet/A4%20card%204xA6" in page
    assert len(page.encode()) < 150_000


def test_every_stock_has_its_heading() -> None:
    """Paper and material decide; rolls stand apart."""
    assert {group_of(stock) for stock in STOCKS} == set(GROUPS) - {"own"}


def test_a_stock_of_ones_own_is_forgotten_and_brought_back(client: httpx.Client) -> None:
    """It stands first; undone, it is there again."""
    send(client, DRAWN, "/stocks/keep", MEASURES)
    assert "Sheets of your own" in show(client, "/stocks")
    page = follow(client, send(client, "/you", "/stocks/forget", {"name": "Green box"}))
    assert "Sheets of your own" not in page
    assert 'action="/stocks/keep"' in page
    assert 'name="label_width" value="99.1"' in page
    unknown = send(client, "/you", "/stocks/forget", {"name": "Green box"}, status=422)
    assert "Green box" in unknown.text
