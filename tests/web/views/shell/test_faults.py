from __future__ import annotations

import httpx

from tests.web.sent import problem_of
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
