"""Tests for drawing a sheet of somebody's own."""

from __future__ import annotations

import httpx

from tests.web.sent import problem_of
from tests.web.store.cards.test_wanted import OURS


def test_a_sheet_of_ones_own_is_drawn(client: httpx.Client) -> None:
    """Its positions lie where its measures say; measures that contradict each other are named."""
    drawn = client.post("/api/stocks/preview", json=OURS).json()
    assert drawn["name"] == OURS["name"]
    assert len(drawn["rects"]) == drawn["columns"] * drawn["rows"]
    first, second = drawn["rects"][:2]
    assert second["x_mm"] > first["x_mm"]
    refused = client.post("/api/stocks/preview", json={**OURS, "pitch_x": "10 mm"})
    assert "pitch x" in problem_of(refused)["detail"]
