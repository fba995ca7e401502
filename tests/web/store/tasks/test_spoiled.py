from __future__ import annotations

import httpx

from tests.web.sent import problem_of


def test_what_is_not_there_is_refused_at_once(client: httpx.Client) -> None:
    """Nobody waits in a line to hear that there is no such run."""
    sheet = {"run": 7, "file": "end-label.pdf", "sheet": 1}
    assert problem_of(client.post("/api/tasks/spoiled", json=sheet))["code"] == "not-in-store"
    assert client.get("/api/tasks").json()["tasks"] == []
