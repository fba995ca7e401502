from __future__ import annotations

import io
from pathlib import Path

import httpx
import pypdf

from tests.web.sent import problem_of
from tests.web.store.examples import add_run
from tests.web.store.opened import BOX, seen

PATH = "/api/swap-list"


def make_one_wrong(client: httpx.Client) -> None:
    """Attach the first card of run 1 and give its box another title."""
    card = client.get("/api/prints/1").json()["cards"][0]
    assert client.post(f"/api/cards/{card['card']}/attached").is_success
    first = client.get(f"/api/containers/{BOX}")
    record = first.json()["record"] | {"title": "Pilots' gear"}
    client.put(f"/api/containers/{BOX}", json={"record": record}, headers=seen(first))


def test_the_list_comes_as_pdf(client: httpx.Client, tmp_path: Path) -> None:
    """It names the box, why its card is wrong, and who walks; nothing wrong gives no list."""
    assert problem_of(client.post(PATH))["code"] == "nothing-to-do"
    add_run(tmp_path / "data")
    make_one_wrong(client)
    reply = client.post(PATH, params={"paper": "Letter"})
    assert reply.headers["content-type"] == "application/pdf"
    (page,) = pypdf.PdfReader(io.BytesIO(reply.content)).pages
    words = page.extract_text()
    assert BOX in words
    assert "Ada Quill" in words
    assert "Pilots' gear" in words
    assert float(page.mediabox.width) == 612
