from __future__ import annotations

import httpx

from service.web.views.routes import PARTS
from tests.web.views.opened import show


def test_every_page_without_a_number_is_there(client: httpx.Client) -> None:
    """Each can be opened by itself, in a store that holds something."""
    paths = {
        route.path
        for part in PARTS
        for route in part.router.routes
        if "GET" in route.methods and "{" not in route.path
    }
    assert {"/", "/you", "/containers"} <= paths
    for path in paths:
        assert "<h1>" in show(client, path)
