from __future__ import annotations

import httpx

from tests.web.sent import problem_of
from tests.web.store.opened import BOX, EMPTY_BOX, seen

NEW = {"record": {"container_number": "B/9", "title": "Rope work", "location": ["Store 1"]}}


def test_containers_are_listed(client: httpx.Client) -> None:
    """The list names each container with its current revision."""
    lines = client.get("/api/containers").json()["containers"]
    assert [(each["container_number"], each["revision"]) for each in lines] == [
        (BOX, 1),
        (EMPTY_BOX, 0),
    ]
    assert lines[0]["location"]


def test_container_is_added_and_changed(client: httpx.Client) -> None:
    """A new container is kept under its own address, and changed from the state seen."""
    made = client.post("/api/containers", json=NEW)
    assert made.status_code == 201
    path = made.headers["location"]
    first = client.get(path)
    assert first.json()["revision"] == 0
    record = first.json()["record"] | {"title": "Cordage"}
    changed = client.put(path, json={"record": record}, headers=seen(first))
    assert changed.json()["record"]["title"] == "Cordage"
    late = client.put(path, json={"record": record}, headers=seen(first))
    assert problem_of(late)["status"] == 412


def test_taken_number_is_refused(client: httpx.Client) -> None:
    """Two containers cannot have one number."""
    problem = problem_of(client.post("/api/containers", json={"record": {"container_number": BOX}}))
    assert (problem["status"], problem["code"]) == (409, "already-there")


def test_unknown_container_is_a_problem(client: httpx.Client) -> None:
    """A number that names nothing is told as such, whether read or changed."""
    record = {"record": {"container_number": "none"}}
    for reply in (
        client.get("/api/containers/none"),
        client.put("/api/containers/none", json=record, headers={"If-Match": '"x"'}),
    ):
        problem = problem_of(reply)
        assert (problem["status"], problem["code"]) == (404, "not-in-store")


def test_a_number_like_a_path_is_found(client: httpx.Client) -> None:
    """What ends in the name of another path is found by its number, exactly, or not at all."""
    for number in ("PM/packings", "PM/checks", "PM/history"):
        record = {"container_number": number, "title": "Odd"}
        assert client.post("/api/containers", json={"record": record}).status_code == 201
        (line,) = client.get("/api/containers", params={"number": number}).json()["containers"]
        assert (line["container_number"], line["title"], line["revision"]) == (number, "Odd", 0)
    for number in ("PM", "pm/checks", ""):
        page = client.get("/api/containers", params={"number": number})
        assert (page.json(), "link" in page.headers) == ({"containers": []}, False)
