from __future__ import annotations

import re

import httpx
import pytest

from service.web.views.help.pages import PAGES
from tests.web.views.opened import show


def test_the_start_leads_to_every_page(client: httpx.Client) -> None:
    """Each has its title and a line about it."""
    page = show(client, "/help")
    for name in PAGES:
        assert f'<h2><a href="/help/{name}">' in page
    assert client.get("/help/none").status_code == 404


@pytest.mark.parametrize("name", PAGES)
def test_a_page_is_short_and_names_its_sources(client: httpx.Client, name: str) -> None:
    """One screen, not a handbook; it is marked among the others, and its links lead somewhere."""
    page = show(client, f"/help/{name}")
    text = re.sub(r"<[^>]+>", " ", page.split("<article")[1].split("</article>")[0])
    assert 80 < len(text.split()) < 420
    assert 'class="sources"' in page
    assert f'href="/help/{name}" aria-current="page"' in page
    for path in re.findall(r'href="(/[a-z]+)"', page.split("<article")[1]):
        if path in {"/rules", "/printers", "/stocks", "/checks"}:
            assert "<h1>" in show(client, path)
    assert "style=" not in page
