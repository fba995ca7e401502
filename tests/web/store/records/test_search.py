from __future__ import annotations

import httpx

from tests.web.sent import problem_of
from tests.web.store.opened import BOX, SPIKE


def test_the_answer_says_which_box_it_is_in(client: httpx.Client) -> None:
    """One request gives number, title, container and place."""
    found = client.get("/api/search", params={"q": "marlin"}).json()
    (hit,) = found["objects"]
    assert (hit["object_number"], hit["lies_in"][0]["container_number"]) == (SPIKE, BOX)
    assert hit["lies_in"][0]["location"]
    box = client.get("/api/search", params={"q": BOX}).json()["containers"]
    assert [one["container_number"] for one in box] == [BOX]
    assert client.get("/api/search", params={"q": '" OR *'}).json()["objects"] == []
    assert problem_of(client.get("/api/search"))["code"] == "unusable-field"
