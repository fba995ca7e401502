"""Tests for the page after an import."""

from __future__ import annotations

import httpx

from tests.web.views.intake.sent import WITH_BOXES, press, send_files
from tests.web.views.opened import show


def test_what_was_done_and_what_comes_next(client: httpx.Client) -> None:
    """Counts, the way back and printing."""
    done = press(client, send_files(client, ("list.csv", WITH_BOXES)), "/import/take-over")
    page = " ".join(show(client, done).split())
    assert "3 objects new" in page
    assert "Undo the whole import" in page
    assert "/print?what=lacking" in page


def test_there_may_be_none(client: httpx.Client) -> None:
    """Photos alone are no import; a number that names none is told."""
    assert "What next" in show(client, "/import/done")
    show(client, "/import/done?id=77", status=404)
