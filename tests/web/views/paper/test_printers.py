from __future__ import annotations

import html
from pathlib import Path

import httpx
import pytest

from service.keeping.printing.printers_file import keep_saved
from tests.web.store.examples import PRINTERS
from tests.web.views.opened import follow, send, show

ADDRESS = "ipp://printer.example/ipp/print"


@pytest.fixture
def measured(tmp_path: Path, client: httpx.Client) -> httpx.Client:
    """Give a client of a service that knows a printer."""
    keep_saved(tmp_path / "data", PRINTERS)
    return client


def test_a_printer_is_told_in_words(measured: httpx.Client) -> None:
    """How it is off, what is left, when it was measured, what it cannot print."""
    page = show(measured, "/printers")
    assert "Office copier" in page
    assert "2.00 mm too far right and 1.00 mm too low" in page
    assert "as exactly as a ruler can be read" in page
    assert "12" in page.partition("It cannot print")[2][:60]
    assert "25 Nov 2026" in page


def test_a_printer_is_forgotten_and_brought_back(measured: httpx.Client) -> None:
    """One tray, or all of it; undone, nothing is lost."""
    before = measured.get("/api/printers").json()
    for fields in ({"name": "Office copier", "tray": "2"}, {"name": "Office copier"}):
        page = follow(measured, send(measured, "/printers", "/printers/forget", fields))
        assert measured.get("/api/printers").json() != before
        kept = html.unescape(page.split('name="printer" value="')[1].split('"')[0])
        follow(measured, send(measured, "/printers", "/printers/restore", {"printer": kept}))
        assert measured.get("/api/printers").json() == before
    unknown = {"name": "Nobody's"}
    assert "Nobody" in send(measured, "/printers", "/printers/forget", unknown, status=422).text


def test_an_address_is_kept_and_a_wrong_one_told(measured: httpx.Client) -> None:
    """Beside its field, with what was typed; the printer need not be measured."""
    fields = {"name": "office copier", "address": ADDRESS}
    page = follow(measured, send(measured, "/printers", "/printers/address", fields))
    assert f"<code>{ADDRESS}</code>" in page
    assert 'name="address" value=""' in page
    wrong = {"name": "Front desk", "address": "http://192.0.2.7"}
    answer = send(measured, "/printers", "/printers/address", wrong, status=422)
    assert 'id="fault-address"' in answer.text
    assert 'value="http://192.0.2.7"' in answer.text
    nameless = send(measured, "/printers", "/printers/address", {"address": ADDRESS}, status=422)
    assert 'id="fault-name"' in nameless.text
    page = follow(
        measured, send(measured, "/printers", "/printers/address", {"name": "Front desk"})
    )
    assert "Not measured yet" in page
