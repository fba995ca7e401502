from __future__ import annotations

import httpx

from tests.web.store.opened import SPIKE
from tests.web.views.contents.packed import SPIKE_KEY, change, page_of, places_of, undo


def test_it_is_taken_out_and_undone(client: httpx.Client) -> None:
    """Nobody is asked whether he is sure: the way back stands on the next page."""
    before = places_of(client)
    page = change(client, "/contents/take-out", {}, key=SPIKE_KEY)
    assert f"{SPIKE} is taken out." in page
    assert SPIKE not in [number for number, _ in places_of(client)]
    assert "Packed again as it was at revision 1." in undo(client, page)
    assert places_of(client) == before


def test_what_is_not_there_is_told(client: httpx.Client) -> None:
    """A key of nothing changes nothing."""
    page = change(client, "/contents/take-out", {}, key="0" * 12, status=422)
    assert "does not lie here any more" in page
    assert SPIKE in page_of(client)
