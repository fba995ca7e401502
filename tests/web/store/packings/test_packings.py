from __future__ import annotations

from typing import Any

import httpx
import pytest

from tests.web.sent import problem_of
from tests.web.store.opened import BOX, EMPTY_BOX, LAMP, SPIKE, seen

PACKINGS = f"/api/containers/{BOX}/packings"
PLACES = {"places": [{"object_number": SPIKE, "layer": 2}], "reason": "Survey"}


def _at(revision: int) -> dict[str, str]:
    return {"If-Match": f'"r{revision}"'}


def _numbers(packing: dict[str, Any]) -> list[str]:
    return [place["object_number"] for place in packing["places"]]


def test_whole_state_is_the_next_revision(client: httpx.Client) -> None:
    """What is said to lie there lies there as the next revision; the one before stays readable."""
    reply = client.post(PACKINGS, json=PLACES, headers=seen(client.get(PACKINGS)))
    assert reply.status_code == 201
    packing = reply.json()["packing"]
    assert (packing["revision"], packing["packed_by"]) == (2, "Ada Quill")
    assert (packing["packed_on"], packing["reason"]) == ("2026-11-25", "Survey")
    assert _numbers(client.get(reply.headers["location"]).json()["packing"]) == [SPIKE]
    assert len(_numbers(client.get(f"{PACKINGS}/1").json()["packing"])) == 9


def test_second_packer_gets_both_states(client: httpx.Client) -> None:
    """Of two who saw the same state the second is told both, and nothing is changed."""
    client.post(PACKINGS, json=PLACES, headers=_at(1))
    problem = problem_of(client.post(PACKINGS, json={"places": []}, headers=_at(1)))
    assert (problem["status"], problem["code"]) == (412, "stale")
    assert _numbers(problem["current"]) == [SPIKE]
    assert problem["current"]["revision"] == 2
    assert problem["yours"].get("places", []) == []
    assert client.get(PACKINGS).headers["etag"] == '"r2"'


@pytest.mark.parametrize(
    ("act", "body"),
    [
        ("packings", PLACES),
        ("put-in", {"place": {"object_number": "new"}}),
        ("take-out", {"object_number": SPIKE}),
        ("place-anew", {"place": {"object_number": SPIKE, "layer": 3}}),
    ],
)
def test_every_change_names_the_state_seen(
    client: httpx.Client, act: str, body: dict[str, object]
) -> None:
    """Without If-Match nothing is changed; with an old one both states are told."""
    path = f"/api/containers/{BOX}/{act}"
    for headers in ({}, {"If-Match": "*"}, {"If-Match": '"r1", "r2"'}, {"If-Match": '"abc"'}):
        problem = problem_of(client.post(path, json=body, headers=headers))
        assert (problem["status"], problem["code"]) == (428, "if-match-missing")
    assert client.post(path, json=body, headers=_at(1)).status_code == 201
    problem = problem_of(client.post(path, json=body, headers=_at(1)))
    assert (problem["status"], problem["code"]) == (412, "stale")


def test_objects_go_in_out_and_elsewhere(client: httpx.Client) -> None:
    """Each act is a revision of its own that changes only what it names."""
    path = f"/api/containers/{BOX}"
    reply = client.post(f"{path}/take-out", json={"object_number": LAMP}, headers=_at(1))
    assert LAMP not in _numbers(reply.json()["packing"])
    place = {"object_number": LAMP, "layer": 1, "compartment": "A1"}
    reply = client.post(f"{path}/put-in", json={"place": place}, headers=_at(2))
    assert _numbers(reply.json()["packing"])[-1] == LAMP
    body = {"place": place | {"compartment": "B2"}, "reason": "Better padded"}
    reply = client.post(f"{path}/place-anew", json=body, headers=_at(3))
    assert reply.json()["packing"]["places"][-1]["compartment"] == "B2"
    assert reply.json()["packing"]["revision"] == 4


def test_packings_are_listed_newest_first(client: httpx.Client) -> None:
    """The list comes page by page, each revision once."""
    for revision in range(1, 5):
        client.post(PACKINGS, json=PLACES, headers=_at(revision))
    revisions: list[int] = []
    address = f"{PACKINGS}?limit=2"
    while address:
        reply = client.get(address)
        revisions += [each["revision"] for each in reply.json()["packings"]]
        address = reply.links.get("next", {}).get("url", "")
    assert revisions == [5, 4, 3, 2, 1]
    problem = problem_of(client.get(f"{PACKINGS}?after=x"))
    assert (problem["status"], problem["code"]) == (422, "cursor")


def test_object_lies_in_one_container(client: httpx.Client) -> None:
    """What lies in another container is refused with its name there."""
    path = f"/api/containers/{EMPTY_BOX}/put-in"
    reply = client.post(path, json={"place": {"object_number": SPIKE}}, headers=_at(0))
    problem = problem_of(reply)
    assert (problem["status"], problem["code"]) == (409, "packed-elsewhere")
    assert BOX in problem["detail"]


@pytest.mark.parametrize(
    ("act", "body", "status"),
    [
        ("take-out", {"object_number": "none"}, 404),
        ("place-anew", {"place": {"object_number": "none"}}, 404),
        ("put-in", {"place": {"object_number": ""}}, 422),
        ("put-in", {"place": {"object_number": "a", "layer": 0}}, 422),
        ("put-in", {"place": {"object_number": "a", "depth": 1}}, 422),
        ("packings", {"places": "all"}, 422),
    ],
)
def test_impossible_change_is_refused(
    client: httpx.Client, act: str, body: dict[str, object], status: int
) -> None:
    """What does not lie there, or is no place, is refused."""
    reply = client.post(f"/api/containers/{BOX}/{act}", json=body, headers=_at(1))
    assert problem_of(reply)["status"] == status
    assert client.get(PACKINGS).headers["etag"] == '"r1"'


@pytest.mark.parametrize("path", ["/api/containers/none/packings", f"{PACKINGS}/9"])
def test_unknown_packing_is_a_problem(client: httpx.Client, path: str) -> None:
    """A container or revision that is not there is told as such."""
    assert problem_of(client.get(path))["status"] == 404
