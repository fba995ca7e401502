from __future__ import annotations

import io

import httpx
import pypdf
import pytest

from tests.web.sent import problem_of
from tests.web.store.opened import BOX, SPIKE


def words_of(reply: httpx.Response) -> str:
    """Read a paper."""
    assert reply.headers["content-type"] == "application/pdf"
    return " ".join(
        page.extract_text() for page in pypdf.PdfReader(io.BytesIO(reply.content)).pages
    )


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_papers_come_as_pdf(client: httpx.Client) -> None:
    """What is due, what is out, and what is kept apart."""
    assert BOX in words_of(client.post("/api/check-sheet", params={"kind": "labels"}))
    out = {"object_number": SPIKE, "container_number": BOX, "to_whom": "I. Hale"}
    made = client.post("/api/outs", json=out).json()["out_id"]
    assert "I. Hale" in words_of(client.post(f"/api/outs/{made}/slip", params={"paper": "A6"}))
    label = client.post("/api/isolation-labels", json={"number": SPIKE, "why": "moth"})
    assert "ISOLATED" in words_of(label)
    assert label.headers["content-disposition"] == 'inline; filename="isolation-label.pdf"'


def test_what_is_not_there_gets_no_paper(client: httpx.Client) -> None:
    """A slip of nothing, and a number nobody knows."""
    assert problem_of(client.post("/api/outs/99/slip"))["status"] == 404
    unknown = client.post("/api/isolation-labels", json={"number": "B-402"})
    assert problem_of(unknown)["status"] == 404
