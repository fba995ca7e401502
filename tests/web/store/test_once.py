from __future__ import annotations

import httpx

from tests.web.sent import problem_of

BODY = {"record": {"object_number": "X.999", "title": "Buoy"}}


def test_the_same_request_is_done_once(client: httpx.Client) -> None:
    """Under one key the first reply comes again, headers and all; without a key it is refused."""
    key = {"Idempotency-Key": "k-1"}
    first = client.post("/api/objects", json=BODY, headers=key)
    again = client.post("/api/objects", json=BODY, headers=key)
    assert (first.status_code, again.status_code) == (201, 201)
    assert (again.json(), again.headers["etag"]) == (first.json(), first.headers["etag"])
    assert problem_of(client.post("/api/objects", json=BODY))["code"] == "already-there"


def test_a_key_belongs_to_one_request(client: httpx.Client) -> None:
    """Another body, or another person, under the same key is refused."""
    key = {"Idempotency-Key": "k-1"}
    client.post("/api/objects", json=BODY, headers=key)
    other = {"record": {"object_number": "X.998"}}
    assert problem_of(client.post("/api/objects", json=other, headers=key))["code"] == "key-used"
    somebody = key | {"Underlid-Actor": "Ben%20Marl"}
    refused = client.post("/api/objects", json=BODY, headers=somebody)
    assert problem_of(refused)["code"] == "key-used"
