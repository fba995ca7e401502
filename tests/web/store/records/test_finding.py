from __future__ import annotations

import httpx

from tests.web.sent import problem_of
from tests.web.store.opened import BOX, LAMP


def test_where_an_object_lies_is_told_in_one_step(client: httpx.Client) -> None:
    """Container, place and location; an object that lies nowhere has no places."""
    (place,) = client.get(f"/api/objects/{LAMP}/places").json()["places"]
    assert place["container_number"] == BOX
    client.post("/api/objects", json={"record": {"object_number": "X.999"}})
    assert client.get("/api/objects/X.999/places").json()["places"] == []
    assert problem_of(client.get("/api/objects/none/places"))["status"] == 404
