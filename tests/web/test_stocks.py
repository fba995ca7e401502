"""Tests for the paths of stocks."""

from __future__ import annotations

import httpx

from service.sheets.stocks import STOCKS
from tests.web.sent import problem_of


def test_a_stock_can_be_drawn(client: httpx.Client) -> None:
    """Eight labels of A4: sizes from the name, two columns 101.64 mm apart, the block centred."""
    drawn = client.get("/api/stocks/A4 2x4 99.1x67.7").json()
    assert drawn["page_mm"] == [210.0, 297.0]
    assert (drawn["columns"], drawn["rows"], drawn["positions"]) == (2, 4, 8)
    rects = drawn["rects"]
    assert [rect["position"] for rect in rects] == list(range(1, 9))
    assert {(rect["width_mm"], rect["height_mm"]) for rect in rects} == {(99.1, 67.7)}
    assert [rects[0]["x_mm"], rects[0]["y_mm"]] == [4.63, 13.1]
    assert [rects[1]["x_mm"], rects[1]["y_mm"]] == [106.27, 13.1]
    assert [rects[7]["x_mm"], rects[7]["y_mm"]] == [106.27, 216.2]


def test_every_stock_of_the_list_can_be_drawn(client: httpx.Client) -> None:
    """Names go into the path as they are; each position lies on the page."""
    listed = client.get("/api/stocks").json()
    assert len(listed) == len(STOCKS)
    for stock in listed:
        drawn = client.get(f"/api/stocks/{stock['name']}").json()
        assert {name: drawn[name] for name in stock} == stock
        width_mm, height_mm = stock["page_mm"]
        for rect in drawn["rects"]:
            assert 0 <= rect["x_mm"] <= width_mm + 0.001 - rect["width_mm"]
            assert 0 <= rect["y_mm"] <= height_mm + 0.001 - rect["height_mm"]


def test_an_unknown_stock_is_told(client: httpx.Client) -> None:
    """The problem says what there is."""
    assert problem_of(client.get("/api/stocks/A4 9x9"))["status"] == 422
