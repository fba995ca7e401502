from __future__ import annotations

import io

import httpx
import pypdf
import pytest

from tests.web.store.opened import BOX


def _words(answer: httpx.Response) -> str:
    assert answer.headers["content-type"] == "application/pdf"
    pages = pypdf.PdfReader(io.BytesIO(answer.content)).pages
    return " ".join(page.extract_text() for page in pages)


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_sheet_and_label_open_as_pdf(client: httpx.Client) -> None:
    """The sheet names what is due, the label what is kept apart and why."""
    assert BOX in _words(client.get("/checks/sheet/A4?kind=pests"))
    asked = {"number": BOX, "why": "Larvae in felt"}
    words = _words(client.get("/checks/isolation-label/Letter", params=asked))
    assert BOX in words
    assert "Larvae in felt" in words


def test_other_paper_is_refused(client: httpx.Client) -> None:
    """There is no page for it, and none for an unknown number."""
    assert client.get("/checks/sheet/A9").status_code == 404
    unknown = client.get("/checks/isolation-label/A4", params={"number": "B-999"})
    assert unknown.status_code == 404
