from __future__ import annotations

import re

import httpx

from tests.web.store.opened import SPIKE
from tests.web.views.contents.packed import SPIKE_KEY, change, page_of

OUT = "/contents/out"
SLIP = {"to_whom": "Conservation, R. Vane", "due_back": "2026-12-20", "why": "Cleaning"}


def test_what_is_out_is_told_in_its_gap(client: httpx.Client) -> None:
    """To whom and until when; its place stays, and the button says that it is back."""
    page = change(client, OUT, SLIP, key=SPIKE_KEY)
    gap = page.split(f'id="p-{SPIKE_KEY}"')[1].split("</li>")[0]
    assert "Conservation, R. Vane" in gap
    assert "20 Dec 2026" in gap
    out = re.search(r'name="out" value="(\d+)"', gap)
    assert out is not None
    page = change(client, "/contents/returned", {"out": out[1]})
    assert f"{SPIKE} is back in its place." in page
    assert "Conservation, R. Vane" not in page_of(client)


def test_a_slip_says_who_has_it(client: httpx.Client) -> None:
    """A day that can be read two ways is told, too."""
    page = change(client, OUT, {"to_whom": " "}, key=SPIKE_KEY, status=422)
    assert 'id="fault-to_whom"' in page
    page = change(client, OUT, SLIP | {"due_back": "3/4/2027"}, key=SPIKE_KEY, status=422)
    assert 'id="fault-due_back"' in page
    assert client.get("/api/outs").json()["outs"] == []
