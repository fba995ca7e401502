from __future__ import annotations

import httpx

from service.web.views.shell.page import POLICY
from tests.web.views.opened import HTML, show


def test_a_page_loads_only_from_here(client: httpx.Client) -> None:
    """No other host, no inline script, no frame."""
    answer = client.get("/containers", headers=HTML)
    assert answer.headers["content-security-policy"] == POLICY
    assert "unsafe" not in POLICY
    assert "style=" not in answer.text
    assert "<script>" not in answer.text


def test_the_page_that_is_open_is_marked(client: httpx.Client) -> None:
    """Whoever listens instead of looking hears where they are."""
    assert '<a href="/containers" aria-current="page">' in show(client, "/containers")
