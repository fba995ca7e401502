from __future__ import annotations

import re

import httpx

from tests.web.views.opened import send, show

FILE = "end-label, A4 2x4 99.1x67.7.pdf"


def test_a_run_has_its_files_and_cards(printed: httpx.Client) -> None:
    """The PDF is to be had from the page, and each card tells its state."""
    page = show(printed, "/run/1")
    href = re.search(r'href="([^"]+)" download="end-label[^"]+"', page)
    assert href is not None
    assert printed.get(href[1]).content.startswith(b"%PDF")
    assert page.count("waits</span>") == 5
    printed.post("/api/cards/1/attached")
    assert 'state fine">on</span>' in show(printed, "/run/1")
    show(printed, "/run/9", status=404)


def test_a_spoiled_sheet_is_printed_again_by_a_task(printed: httpx.Client) -> None:
    """The task is there at once; the old cards are marked when the new ones are made."""
    fields = {"run": "1", "file": FILE, "sheet": "1"}
    answer = send(printed, "/run/1", "/run/spoiled", fields)
    assert answer.headers["location"].startswith("/tasks/spoiled-")


def test_a_sheet_that_is_no_number_is_told_beside_its_field(printed: httpx.Client) -> None:
    """What was typed stays, and the printer must be one that was measured."""
    fields = {"run": "1", "file": FILE, "sheet": "first", "printer": '["None", ""]'}
    page = send(printed, "/run/1", "/run/spoiled", fields, status=422).text
    assert 'href="#field-sheet"' in page
    assert 'href="#field-printer"' in page
    assert 'value="first"' in page
    send(printed, "/run/1", "/run/spoiled", {"run": "x", "sheet": "1"}, status=404)
