"""Tests for taking a whole import back."""

from __future__ import annotations

import httpx

from tests.web.store.opened import SPIKE
from tests.web.views.intake.sent import WITH_BOXES, press, send_files
from tests.web.views.intake.test_check import changed
from tests.web.views.opened import show


def test_what_would_go_back_is_shown_first(client: httpx.Client) -> None:
    """Then it is done, and can be taken back itself."""
    press(client, send_files(client, ("export.json", changed())), "/import/take-over")
    page = show(client, "/import/undo?id=1")
    assert "Goes back to what it was" in page
    assert SPIKE in page
    assert "Fid, boxwood" in client.get(f"/api/objects/{SPIKE}").text
    done = press(client, "/import/undo?id=1", "/import/undo")
    told = show(client, done)
    assert "was taken back" in told
    assert 'action="/import/undo"' in told
    assert "Marlinspike" in client.get(f"/api/objects/{SPIKE}").text
    assert "nothing left" in show(client, "/import/undo?id=1")


def test_what_was_changed_since_stays(client: httpx.Client) -> None:
    """It is told beforehand, with who changed it."""
    press(client, send_files(client, ("list.csv", WITH_BOXES)), "/import/take-over")
    seen = client.get("/api/objects/T.3")
    record = {**seen.json()["record"], "title": "Hook, brass"}
    headers = {"If-Match": seen.headers["etag"]}
    assert client.put("/api/objects/T.3", json={"record": record}, headers=headers).is_success
    page = show(client, "/import/undo?id=1")
    assert "Object T.3 was changed since by Ada Quill" in page


def test_no_number_leads_to_the_list(client: httpx.Client) -> None:
    """Nothing is guessed."""
    assert "Earlier imports" in show(client, "/import/undo")
