from __future__ import annotations

import httpx
import pytest

from tests.web.sent import problem_of
from tests.web.store.opened import BOX, SPIKE, seen


def test_history_tells_who_and_what(client: httpx.Client) -> None:
    """A change stands in the history of its record, with the person as named and both values."""
    path = f"/api/objects/{SPIKE}"
    first = client.get(path)
    record = first.json()["record"] | {"title": "Fid"}
    headers = {**seen(first), "Underlid-Actor": "%C5%81ucja%20Mer"}
    client.put(path, json={"record": record}, headers=headers)
    events = client.get(f"{path}/history").json()["events"]
    assert [(each["actor"], each["verb"]) for each in events] == [
        ("Ada Quill", "recorded"),
        ("Ada Quill", "put in"),
        ("Łucja Mer", "changed"),
    ]
    told = events[-1]["detail"]["record"]
    assert told["after"] == {"title": "Fid"}
    assert told["before"]["title"].startswith("Marlinspike")


def test_history_of_a_container_tells_its_packings(client: httpx.Client) -> None:
    """The first packing stands there with its revision."""
    events = client.get(f"/api/containers/{BOX}/history").json()["events"]
    assert ("packed", 1) in {(each["verb"], each["revision"]) for each in events}


@pytest.mark.parametrize("path", ["objects/none", "containers/none"])
def test_history_of_nothing_is_a_problem(client: httpx.Client, path: str) -> None:
    """A number that names nothing has no history."""
    assert problem_of(client.get(f"/api/{path}/history"))["status"] == 404
