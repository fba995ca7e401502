from __future__ import annotations

import httpx
import pytest

from tests.web.sent import problem_of
from tests.web.store.opened import BOX, seen

PATH = f"/api/containers/{BOX}"


def test_what_is_not_sent_stays(client: httpx.Client) -> None:
    """Place, weight and packing each by itself; the title is nobody's here (RFC 7396)."""
    before = client.get(PATH)
    record = before.json()["record"]
    for change in (
        {"location": ["Store 9", "Shelf 1"]},
        {"gross": {"weight_g": 6200.0, "basis": "measured"}},
        {"packing_materials": ["acid-free tissue"]},
        {"gross": None},
    ):
        answer = client.patch(PATH, json=change, headers=seen(client.get(PATH)))
        record |= change
        assert answer.json()["record"] == record
        assert answer.headers["etag"] == client.get(PATH).headers["etag"]
    stale = client.patch(PATH, json={"gross": None}, headers=seen(before))
    assert problem_of(stale)["status"] == 412


@pytest.mark.parametrize(
    "body", [{"title": "Mine"}, {"location": None}, {"gross": {"weight_g": "heavy"}}]
)
def test_nothing_else_is_changed(client: httpx.Client, body: dict[str, object]) -> None:
    """Whoever packs does not rename what lies there."""
    refused = client.patch(PATH, json=body, headers=seen(client.get(PATH)))
    assert problem_of(refused)["code"] == "unusable-field"


def test_a_container_is_begun_at_the_table(client: httpx.Client) -> None:
    """Number and kind are enough; a number that is taken is refused."""
    body = {"container_number": "B-060", "kind": "tube"}
    made = client.post("/api/begun-containers", json=body)
    assert (made.status_code, made.json()["record"]["kind"]) == (201, "tube")
    assert client.get(made.headers["location"]).json()["revision"] == 0
    assert problem_of(client.post("/api/begun-containers", json=body))["status"] == 409
