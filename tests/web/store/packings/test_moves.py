from __future__ import annotations

import httpx
import pytest

from tests.web.sent import problem_of
from tests.web.store.opened import BOX, EMPTY_BOX, SPIKE

MOVE = {
    "place": {"object_number": SPIKE, "compartment": "A1"},
    "from_container": BOX,
    "from_revision": 1,
    "to_container": EMPTY_BOX,
    "to_revision": 0,
}


def test_object_moves_in_one_step(client: httpx.Client) -> None:
    """Both containers get a revision, and the object is found where it went."""
    reply = client.post("/api/moves", json=MOVE)
    assert reply.status_code == 201
    assert (reply.json()["left"]["revision"], reply.json()["entered"]["revision"]) == (2, 1)
    (place,) = client.get(f"/api/objects/{SPIKE}/places").json()["places"]
    assert (place["container_number"], place["place"]["compartment"]) == (EMPTY_BOX, "A1")


@pytest.mark.parametrize(
    ("changed", "status", "code"),
    [
        pytest.param({"from_revision": 0}, 409, "packing-conflict", id="left meanwhile"),
        pytest.param({"to_revision": 4}, 409, "packing-conflict", id="entered meanwhile"),
        pytest.param({"to_container": BOX}, 422, "unusable-field", id="nowhere"),
        pytest.param({"to_container": "none"}, 404, "not-in-store", id="unknown"),
        pytest.param({"place": {"object_number": "none"}}, 404, "not-in-store", id="not there"),
        pytest.param({"to_revision": -1}, 422, "unusable-field", id="no revision"),
    ],
)
def test_impossible_move_changes_nothing(
    client: httpx.Client, changed: dict[str, object], status: int, code: str
) -> None:
    """Neither container gets a revision; a conflict holds both states."""
    problem = problem_of(client.post("/api/moves", json=MOVE | changed))
    assert (problem["status"], problem["code"]) == (status, code)
    assert ("yours" in problem) == (status == 409)
    assert client.get(f"/api/containers/{BOX}/packings").headers["etag"] == '"r1"'
    assert client.get(f"/api/containers/{EMPTY_BOX}/packings").headers["etag"] == '"r0"'


def test_how_both_are_packed_is_told(client: httpx.Client) -> None:
    """A move that brings rubber to brass says so; the container it left has nothing to tell."""
    for number, material in (("N.1", "rubber"), ("N.2", "brass")):
        record = {"object_number": number, "materials": [material]}
        assert client.post("/api/objects", json={"record": record}).status_code == 201
    client.post("/api/containers", json={"record": {"container_number": "N-B"}})
    put_in = f"/api/containers/{EMPTY_BOX}/put-in"
    body = {"place": {"object_number": "N.1"}}
    assert client.post(put_in, json=body, headers={"If-Match": '"r0"'}).json()["findings"] == []
    body = {"place": {"object_number": "N.2"}}
    path = "/api/containers/N-B/put-in"
    assert client.post(path, json=body, headers={"If-Match": '"r0"'}).json()["findings"] == []
    move = {
        "place": {"object_number": "N.2"},
        "from_container": "N-B",
        "from_revision": 1,
        "to_container": EMPTY_BOX,
        "to_revision": 1,
    }
    (finding,) = client.post("/api/moves", json=move).json()["findings"]
    assert (finding["code"], finding["where"]) == ("conflicting-materials", f"{EMPTY_BOX}, N.1")
    packings = f"/api/containers/{EMPTY_BOX}/packings"
    assert client.get(f"{packings}/2").json()["findings"] == [finding]
    assert client.get(f"{packings}/1").json()["findings"] == []
