from __future__ import annotations

import httpx

from service.web.views.routes import PARTS
from tests.web.views.opened import HTML


def test_every_page_without_a_number_is_there(client: httpx.Client) -> None:
    """Each can be opened by itself; one that needs to know of what says so on a page."""
    paths = {
        route.path
        for part in PARTS
        for route in part.router.routes
        if "GET" in route.methods and "{" not in route.path
    }
    assert {"/", "/you", "/containers"} <= paths
    for path in paths - {"/pack/sw.js"}:
        answer = client.get(path, headers=HTML)
        assert answer.status_code in {200, 404, 422}, path
        assert "<h1" in answer.text, path
