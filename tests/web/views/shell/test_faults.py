from __future__ import annotations

from pathlib import Path

import httpx

from service.pipeline.ready import Workshop
from tests.web.sent import problem_of
from tests.web.store.opened import open_client
from tests.web.store.people.people import add_people
from tests.web.views.opened import HTML, show


def test_a_browser_gets_a_page_and_a_program_data(client: httpx.Client) -> None:
    """Both are told the same, each as they can read it."""
    page = show(client, "/nothing-here", status=404)
    assert "<h1>Not found</h1>" in page
    assert problem_of(client.get("/nothing-here"))["code"] == "not-found"


def test_who_is_to_come_again_is_told_when(client: httpx.Client) -> None:
    """The header is on the page as on the data."""
    for _ in range(60):
        client.get("/c/X", headers=HTML)
    answer = client.get("/c/X", headers=HTML)
    assert answer.status_code == 429
    assert answer.headers["retry-after"] == "60"


def test_a_script_is_sent_to_sign_in_whole(tmp_path: Path, workshop: Workshop) -> None:
    """A page within a part of another would be no page; what is no page is not come back to."""
    folder = tmp_path / "data"
    with open_client(folder, workshop) as client:
        add_people(folder)
        asked = client.get("/containers", headers={**HTML, "HX-Request": "true"})
        assert asked.status_code == 401
        assert asked.headers["hx-redirect"] == "/sign-in?to=%2Fcontainers"
        sent = client.post("/you", headers=HTML)
        assert sent.headers["location"] == "/sign-in"
