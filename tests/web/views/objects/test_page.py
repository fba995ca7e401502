from __future__ import annotations

import httpx

from tests.web.store.opened import BOX, SPIKE
from tests.web.views.opened import show


def test_a_page_tells_what_where_and_what_can_hurt(client: httpx.Client) -> None:
    """Its place, its stays, its tag, and the ways to print and to edit it."""
    page = show(client, f"/objects/{SPIKE}")
    assert f'href="/containers/{BOX}"' in page
    assert "Put in" in page
    assert f"/print?what=objects&amp;objects={SPIKE}" in page
    assert f"/edit/object/{SPIKE}" in page
    assert "None is attached." in page
    assert "<dt>Materials</dt>" in page


def test_silence_is_no_promise(client: httpx.Client) -> None:
    """An object without recorded hazards says just that; one that is out says so."""
    client.post("/api/objects", json={"record": {"object_number": "PM/7 a", "restricted": True}})
    page = show(client, "/objects/PM/7%20a")
    assert "That is no promise" in page
    assert "It is packed nowhere." in page
    assert "Restricted" in page
    client.post("/api/outs", json={"object_number": SPIKE, "container_number": BOX})
    assert "Out since 25 Nov 2026" in show(client, f"/objects/{SPIKE}")


def test_an_unknown_number_is_told(client: httpx.Client) -> None:
    """As a page."""
    show(client, "/objects/none", status=404)
