from __future__ import annotations

import json
import re

import httpx

from service.web.views.pack.worker import NEEDED
from tests.web.store.opened import BOX
from tests.web.views.opened import show


def test_the_worker_may_serve_the_table_and_keeps_what_it_needs(client: httpx.Client) -> None:
    """Every style, script and drawing that the page asks for."""
    answer = client.get("/pack/sw.js")
    assert answer.headers["service-worker-allowed"] == "/pack"
    assert answer.headers["content-type"].startswith("text/javascript")
    assert "connect-src 'self'" in answer.headers["content-security-policy"]
    kept = json.loads(answer.text.split("const KEPT = ")[1].split(";\n")[0])
    assert len(kept) == len(NEEDED) + 1
    asked = set(re.findall(r'"(/assets/[^"]+)"', show(client, f"/pack/table?container={BOX}")))
    assert asked <= set(kept)
    assert all(client.get(path).status_code == 200 for path in kept)


def test_there_is_a_page_for_no_connection(client: httpx.Client) -> None:
    """It shows what waits."""
    assert 'id="pack-queue"' in show(client, "/pack/offline")
