"""Tests for the paths of a print run before it is made, with real ink."""

from __future__ import annotations

import io

import httpx
import pytest
from PIL import Image

from tests.web.sent import problem_of
from tests.web.store.opened import BOX

pytestmark = [pytest.mark.print, pytest.mark.slow]

LABELS: dict[str, object] = {"containers": [BOX], "kinds": ["end-label"]}
PATH = "/api/prints/preview"


def test_a_run_is_shown_before_it_is_made(client: httpx.Client) -> None:
    """It says what lies where, its sheet is that of the run, and until then nothing is printed."""
    plan = client.post(PATH, json={**LABELS, "start_position": 2, "skipped": [3]}).json()
    (file,) = plan["files"]
    assert (file["kind"], file["cards"], file["left_over"]) == ("end-label", 2, [1, 2, 3, 4])
    assert len(file["stock"]["rects"]) == 8
    (sheet,) = file["sheets"]
    assert [one["state"] for one in sheet["positions"]] == [
        "skipped",
        "filled",
        "skipped",
        *["filled"],
        *["free"] * 4,
    ]
    second = sheet["positions"][3]
    assert (second["number"], second["side"], second["face"]) == (BOX, 2, 1)
    assert "no-photo" in {finding["code"] for finding in plan["findings"]}
    assert client.get("/api/prints").json()["runs"] == []
    picture = client.get(sheet["href"], params={"width_px": 420})
    assert Image.open(io.BytesIO(picture.content)).size == (420, 594)
    known = {"If-None-Match": picture.headers["etag"]}
    assert client.get(sheet["href"], params={"width_px": 420}, headers=known).status_code == 304
    body = {**LABELS, "start_position": 2, "skipped": [3]}
    run = client.post("/api/prints", json=body).json()
    printed = client.get(run["files"][0]["href"] + "/pages/1", params={"width_px": 420})
    assert printed.content == picture.content


def test_what_is_not_there_is_told(client: httpx.Client) -> None:
    """No such plan, file, sheet or run; what cannot be printed cannot be planned either."""
    plan = client.post(PATH, json=LABELS).json()
    at = plan["files"][0]["sheets"][0]["href"]
    for path in (
        at.replace(plan["plan"], "0" * 64),
        at.replace("end-label", "lid-card"),
        at.removesuffix("1") + "2",
        "/api/prints/7/files/a.pdf/pages/1",
    ):
        assert problem_of(client.get(path))["code"] == "not-in-store"
    assert problem_of(client.get(at + "?width_px=9"))["code"] == "unusable-field"
    for body, code in (
        ({"stock": "A4 9x9"}, "unknown-stock"),
        ({**LABELS, "start_position": 99}, "start-position"),
        ({"kinds": ["cover-card"]}, "nothing-to-print"),
        ({"printer": "None"}, "unknown-printer"),
        ({"reprints": True}, "not-in-store"),
    ):
        assert problem_of(client.post(PATH, json=body))["code"] == code, body
