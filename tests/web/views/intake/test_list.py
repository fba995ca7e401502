"""Tests for the list of imports."""

from __future__ import annotations

import httpx

from tests.web.views.intake.sent import WITH_BOXES, press, send_files
from tests.web.views.opened import show


def test_each_import_tells_whether_it_was_taken_back(client: httpx.Client) -> None:
    """The latest first; an empty list says so."""
    assert "none yet" in show(client, "/imports")
    press(client, send_files(client, ("list.csv", WITH_BOXES)), "/import/take-over")
    page = show(client, "/imports")
    assert "list.csv" in page
    assert "3 objects" in page
    press(client, "/import/undo?id=1", "/import/undo")
    page = show(client, "/imports")
    assert "taken back" in page
    assert "takes back import 1" in page
