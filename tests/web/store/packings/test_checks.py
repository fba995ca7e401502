from __future__ import annotations

import httpx

from tests.web.sent import problem_of
from tests.web.store.opened import BOX


def test_a_check_takes_a_container_off_the_list(client: httpx.Client) -> None:
    """Packed containers are due until they were looked at."""
    asked = {"before": "2026-11-01"}
    due = client.get("/api/checks/due", params=asked).json()["due"]
    assert [one["container_number"] for one in due] == [BOX]
    body = {"checked_on": "2026-11-25", "note": "no pests"}
    assert client.post(f"/api/containers/{BOX}/checks", json=body).status_code == 201
    assert client.get("/api/checks/due", params=asked).json()["due"] == []
    (check,) = client.get(f"/api/containers/{BOX}/checks").json()["checks"]
    assert (check["note"], check["by"]) == ("no pests", "Ada Quill")
    assert problem_of(client.post("/api/containers/none/checks", json=body))["status"] == 404
