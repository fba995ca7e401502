from __future__ import annotations

import io

import httpx
import pypdf
import pytest


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_sheets_open_as_pdf(client: httpx.Client) -> None:
    """The ruler sheet has its crosses, the test sheet a number in each label and how to look."""
    for path, words in (
        ("/printers/ruler-sheet/A6", ("Ruler sheet", "A  across")),
        ("/stocks/test-sheet/A4 2x4 99.1x67.7", ("8", "hold both to the light")),
    ):
        answer = client.get(path)
        assert answer.headers["content-type"] == "application/pdf"
        (page,) = pypdf.PdfReader(io.BytesIO(answer.content)).pages
        text = " ".join(page.extract_text().split())
        assert all(" ".join(word.split()) in text for word in words)


def test_what_is_not_there_is_refused(client: httpx.Client) -> None:
    """Another paper, and a stock nobody knows."""
    assert client.get("/printers/ruler-sheet/A7").status_code == 422
    assert client.get("/stocks/test-sheet/Nothing").status_code == 422
