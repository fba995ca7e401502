from __future__ import annotations

import csv
import io
from pathlib import Path

import httpx

from tests.web.sent import problem_of
from tests.web.store.examples import add_run
from tests.web.store.opened import BOX, EMPTY_BOX, seen


def test_what_is_lacking_is_listed(client: httpx.Client) -> None:
    """Nothing is attached yet, so nothing is wrong, and every card is lacking."""
    answer = client.get("/api/reprints").json()
    assert answer["reprints"] == answer["findings"] == []
    lacking = {(one["container_number"], one["kind"]) for one in answer["not_attached"]}
    assert (BOX, "lid-card") in lacking
    assert (EMPTY_BOX, "end-label") in lacking


def test_one_container_can_be_asked_for(client: httpx.Client) -> None:
    """Why, or why not; a number nobody knows is a problem."""
    assert client.get("/api/reprints", params={"container": BOX}).json()["reprints"] == []
    assert problem_of(client.get("/api/reprints", params={"container": "none"}))["status"] == 404


def test_the_list_is_a_table(client: httpx.Client, tmp_path: Path) -> None:
    """As CSV each wrong card is a row with its reasons, and no cell begins as a formula would."""
    add_run(tmp_path / "data")
    cards = client.get("/api/prints/1").json()["cards"]
    for card in cards:
        client.post(f"/api/cards/{card['card']}/attached")
    path = f"/api/containers/{BOX}"
    first = client.get(path)
    record = first.json()["record"] | {"title": "Pilots' gear", "location": ["=1+1", "Bay 2"]}
    assert client.put(path, json={"record": record}, headers=seen(first)).status_code == 200
    reply = client.get("/api/reprints", headers={"Accept": "text/csv"})
    assert reply.headers["content-type"].startswith("text/csv")
    rows = list(csv.DictReader(io.StringIO(reply.text)))
    assert {row["container_number"] for row in rows} == {BOX}
    assert len(rows) == len(client.get("/api/reprints").json()["reprints"]) > 0
    assert all(row["location"] == "'=1+1 / Bay 2" and row["why"] for row in rows)
    refused = client.get("/api/reprints", headers={"Accept": "application/pdf"})
    assert problem_of(refused)["status"] == 406
