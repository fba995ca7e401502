from __future__ import annotations

import httpx

from tests.web.sent import problem_of
from tests.web.store.opened import BOX, EMPTY_BOX


def test_a_check_takes_a_container_off_the_list(client: httpx.Client) -> None:
    """Packed containers are due until they were looked at; no result named is all in order."""
    (due,) = client.get("/api/checks/due").json()["due"]
    assert (due["container_number"], due["is_overdue"]) == (BOX, True)
    body = {"checked_on": "2026-11-25", "note": "no pests"}
    made = client.post(f"/api/containers/{BOX}/checks", json=body)
    assert (made.status_code, made.json()["proposal"]) == (201, None)
    assert client.get("/api/checks/due").json()["due"] == []
    (again,) = client.get("/api/checks/due", params={"by": "2027-11-25"}).json()["due"]
    assert {check["due_on"] for check in again["checks"]} == {"2027-11-25"}
    (check,) = client.get(f"/api/containers/{BOX}/checks").json()["checks"]
    assert (check["note"], check["by"]) == ("no pests", "Ada Quill")
    assert {look["result"] for look in check["results"]} == {"ok"}
    assert problem_of(client.post("/api/containers/none/checks", json=body))["status"] == 404
    mistyped = client.post(f"/api/containers/{BOX}/checks", json={"checked_on": "9999-12-31"})
    assert problem_of(mistyped)["code"] == "day-ahead"
    assert client.get("/api/checks/due").status_code == 200


def test_pests_are_answered_with_what_to_do(client: httpx.Client) -> None:
    """The reply names what to isolate; the same key gives the same reply again."""
    body = {"checked_on": "2026-11-25", "results": [{"kind": "pests", "result": "found"}]}
    key = {"Idempotency-Key": "moth"}
    made = client.post(f"/api/containers/{BOX}/checks", json=body, headers=key)
    assert made.json()["proposal"]["isolate"] == BOX
    again = client.post(f"/api/containers/{BOX}/checks", json=body, headers=key)
    assert again.json() == made.json()
    (found,) = client.get("/api/checks/found").json()["found"]
    assert (found["container_number"], found["kind"]) == (BOX, "pests")
    elsewhere = client.get("/api/checks/due", params={"by": "2027-11-25", "place": "Nowhere"})
    assert elsewhere.json()["due"] == []
    asked = {"kind": ["labels", "pests"], "by": "2026-12-25"}
    (due,) = client.get("/api/checks/due", params=asked).json()["due"]
    assert [(check["kind"], check["rule"]) for check in due["checks"]] == [
        ("pests", "check-found-again"),
        ("labels", "check-labels-legible"),
    ]


def test_a_kind_has_one_result(client: httpx.Client) -> None:
    """Found and in order at once is refused, and so is a result nobody knows."""
    twice = [{"kind": "pests", "result": result} for result in ("ok", "found")]
    for results in (twice, [{"kind": "pests", "result": "perhaps"}]):
        body = {"checked_on": "2026-11-25", "results": results}
        refused = client.post(f"/api/containers/{BOX}/checks", json=body)
        assert problem_of(refused)["code"] == "unusable-field"


def test_a_check_noted_by_mistake_is_taken_back(client: httpx.Client) -> None:
    """By its number, once; the container is due again, and another one's check stays."""
    path = f"/api/containers/{BOX}/checks"
    number = client.post(path, json={"checked_on": "2026-11-25"}).json()["check"]
    assert [one["check"] for one in client.get(path).json()["checks"]] == [number]
    astray = client.delete(f"/api/containers/{EMPTY_BOX}/checks/{number}")
    assert problem_of(astray)["status"] == 404
    assert client.delete(f"{path}/{number}").json() == {"checks": []}
    assert problem_of(client.delete(f"{path}/{number}"))["status"] == 404
    assert len(client.get("/api/checks/due").json()["due"]) == 1
