from __future__ import annotations

import httpx

from tests.web.sent import problem_of
from tests.web.store.opened import BOX, EMPTY_BOX, SPIKE

SLIP = {
    "object_number": SPIKE,
    "container_number": BOX,
    "to_whom": "I. Hale",
    "due_back": "2026-12-01",
}


def test_an_object_is_out_and_back(client: httpx.Client) -> None:
    """A slip makes no revision; what is back is listed no more."""
    made = client.post("/api/outs", json=SLIP)
    assert (made.status_code, made.json()["by"]) == (201, "Ada Quill")
    for asked in ({"container": BOX}, {"object": SPIKE}, {"due_before": "2026-12-02"}):
        (out,) = client.get("/api/outs", params=asked).json()["outs"]
        assert out["object_number"] == SPIKE
    assert client.get("/api/outs", params={"due_before": "2026-12-01"}).json()["outs"] == []
    assert client.get(f"/api/containers/{BOX}/packings").headers["etag"] == '"r1"'
    back = client.post(f"/api/outs/{made.json()['out_id']}/back")
    assert back.json()["back_at"]
    assert client.get("/api/outs").json()["outs"] == []


def test_what_is_not_there_cannot_go(client: httpx.Client) -> None:
    """Neither from another container, nor back without a slip."""
    elsewhere = SLIP | {"container_number": EMPTY_BOX}
    assert problem_of(client.post("/api/outs", json=elsewhere))["status"] == 404
    assert problem_of(client.post("/api/outs/99/back"))["status"] == 404
