from __future__ import annotations

import httpx

from tests.web.store.opened import EMPTY_BOX, SPIKE
from tests.web.views.contents.packed import SPIKE_KEY, change, places_of


def test_an_earlier_packing_is_packed_again(client: httpx.Client) -> None:
    """It becomes the next revision."""
    before = places_of(client)
    change(client, "/contents/take-out", {}, key=SPIKE_KEY)
    assert "as it was at revision 1" in change(client, "/contents/back", {"to": "1"})
    assert places_of(client) == before


def test_what_lies_elsewhere_by_now_stays_there(client: httpx.Client) -> None:
    """An object lies in one container only, whatever was."""
    change(client, "/contents/move", {"to": EMPTY_BOX}, key=SPIKE_KEY)
    page = change(client, "/contents/back", {"to": "1"}, status=422)
    assert f"it lies in {EMPTY_BOX}" in page
    assert places_of(client, EMPTY_BOX) == [(SPIKE, 1)]
