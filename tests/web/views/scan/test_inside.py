from __future__ import annotations

import httpx

from tests.web.store.opened import BOX
from tests.web.views.opened import show


def test_this_machine_may_go_in_but_is_told_nothing_more(client: httpx.Client) -> None:
    """As long as there are no users the page leads on; contents are for whoever has signed in."""
    page = show(client, f"/c/{BOX}")
    assert f'href="/containers/{BOX}"' in page
    assert "Marlinspike" not in page
