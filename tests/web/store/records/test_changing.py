from __future__ import annotations

import httpx
import pytest

from tests.web.sent import problem_of
from tests.web.store.opened import SPIKE, seen


@pytest.mark.parametrize(
    "number", ["", " X.1", "X\u200b1", "x" * 201], ids=["none", "blank", "unseen", "long"]
)
def test_a_number_nobody_could_type_is_refused(client: httpx.Client, number: str) -> None:
    """What can be neither printed nor typed is no number."""
    reply = client.post("/api/objects", json={"record": {"object_number": number}})
    assert problem_of(reply)["code"] == "unusable-field"


def test_a_number_is_taken_once_and_stays(client: httpx.Client) -> None:
    """A record is neither added twice nor given another number."""
    body = {"record": {"object_number": SPIKE}}
    assert problem_of(client.post("/api/objects", json=body))["code"] == "already-there"
    path = f"/api/objects/{SPIKE}"
    other = {"record": {"object_number": "X.999"}}
    changed = client.put(path, json=other, headers=seen(client.get(path)))
    assert problem_of(changed)["code"] == "unusable-field"


@pytest.mark.parametrize(
    "odd",
    [
        {"title": "x" * 40_000},
        {"hazards": [{"code": " ", "state": "confirmed"}]},
        {"catalogue_url": "javascript:alert(1)"},
    ],
    ids=["endless", "hazard of no name", "symbol that is no address"],
)
def test_a_record_no_table_could_hold_is_refused(
    client: httpx.Client, odd: dict[str, object]
) -> None:
    """It would keep the workshop busy, stop every card of its box, or be printed for good."""
    added = client.post("/api/objects", json={"record": {"object_number": "X.998", **odd}})
    assert problem_of(added)["code"] == "unusable-field"
    path = f"/api/objects/{SPIKE}"
    body = {"record": {"object_number": SPIKE, **odd}}
    changed = client.put(path, json=body, headers=seen(client.get(path)))
    assert problem_of(changed)["code"] == "unusable-field"
