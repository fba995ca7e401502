from __future__ import annotations

import json

import httpx

from tests.web.sent import problem_of
from tests.web.store.opened import BOX


def test_progress_is_told_until_the_end(client: httpx.Client) -> None:
    """What changes is told once each, and the last word is the end."""
    asked = client.post("/api/tasks/prints", json={"containers": [BOX]})
    where = asked.headers["location"]
    told = []
    with client.stream("GET", f"{where}/events") as stream:
        assert stream.headers["content-type"].startswith("text/event-stream")
        for line in stream.iter_lines():
            if line.startswith("event:"):
                told.append(line.removeprefix("event:").strip())
            if line.startswith("data:"):
                told.append(json.loads(line.removeprefix("data:"))["state"])
            if sorted(told) == ["progress", "waiting"]:
                client.post(f"{where}/cancel")
    assert set(told[:2]) == {"progress", "waiting"}
    assert set(told[2:]) == {"end", "cancelled"}


def test_a_task_of_no_name_is_not_found(client: httpx.Client) -> None:
    """It is said at once, before anything is streamed."""
    assert problem_of(client.get("/api/tasks/none/events"))["status"] == 404
