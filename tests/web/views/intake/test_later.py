"""Tests for much to take in, which is done as tasks."""

from __future__ import annotations

import httpx
import pytest

from service.web.views.intake import later
from tests.web.views.intake.sent import PHOTO, press, send_files
from tests.web.views.opened import show


def test_much_is_asked_for_and_the_page_tells_how_far_it_is(
    client: httpx.Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Records and photos wait in the line, in this order, and nothing is taken in yet."""
    monkeypatch.setattr(later, "AT_ONCE_BYTES", 10)
    files = ("list.csv", b"object_number,title\nT.1,Lead\n"), ("T.1_front.jpg", PHOTO)
    done = press(client, send_files(client, *files), "/import/take-over")
    page = show(client, done)
    assert "Being taken over" in page
    assert page.count("under way") == 2
    kinds = [one["kind"] for one in client.get("/api/tasks").json()["tasks"]]
    assert kinds.count("import") == kinds.count("photos") == 1
    assert client.get("/api/objects/T.1").status_code == 404
