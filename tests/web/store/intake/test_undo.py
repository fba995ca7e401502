from __future__ import annotations

import httpx

from tests.web.sent import problem_of
from tests.web.store.intake.test_imports import changed, sent
from tests.web.store.opened import SPIKE, seen


def _title(client: httpx.Client) -> str:
    title: str = client.get(f"/api/objects/{SPIKE}").json()["record"]["title"]
    return title


def test_an_import_is_taken_back_once(client: httpx.Client) -> None:
    """A preview changes nothing; the same key gives the same reply; a second undo does nothing."""
    before = _title(client)
    number = client.post("/api/imports", files=sent(changed())).json()["import_id"]
    path = f"/api/imports/{number}"
    preview = client.post(f"{path}/undo", params={"preview": "true"}).json()
    assert preview["back"] == [{"kind": "object", "number": SPIKE}]
    assert (preview["import_id"], _title(client)) == (None, "Fid, boxwood")
    key = {"Idempotency-Key": "k-9"}
    first = client.post(f"{path}/undo", headers=key).json()
    assert (first["import_id"], _title(client)) == (number + 1, before)
    assert client.post(f"{path}/undo", headers=key).json() == first
    again = client.post(f"{path}/undo").json()
    assert (again["import_id"], again["done"]) == (None, 1)
    told = client.get(path).json()
    assert (told["undone_by"], told["summary"]["objects changed"]) == ([number + 1], 1)
    assert client.get(f"/api/imports/{number + 1}").json()["undoes"] == number
    assert problem_of(client.get("/api/imports/99"))["code"] == "not-in-store"


def test_what_was_changed_since_is_named(client: httpx.Client) -> None:
    """With who and when, and it stays."""
    number = client.post("/api/imports", files=sent(changed())).json()["import_id"]
    shown = client.get(f"/api/objects/{SPIKE}")
    mine = {"record": {**shown.json()["record"], "title": "Mine"}}
    client.put(f"/api/objects/{SPIKE}", json=mine, headers=seen(shown))
    undone = client.post(f"/api/imports/{number}/undo").json()
    (finding,) = undone["findings"]
    assert (finding["code"], finding["where"]) == ("changed-since-import", SPIKE)
    assert "was changed since by Ada Quill on 2026-11-25" in finding["message"]
    assert (undone["left"], _title(client)) == (1, "Mine")
