"""Tests for the page a phone shows after a scan; it runs over a store of its own."""

from __future__ import annotations

import httpx

from tests.web.sent import problem_of
from tests.web.store.opened import BOX, SPIKE

HTML = {"Accept": "text/html"}


def test_a_program_reads_json_and_a_phone_a_page(client: httpx.Client) -> None:
    """Both say the same: one word first, then what can hurt, how to lift and whom to ask."""
    said = client.get(f"/c/{BOX}", params={"r": "1", "k": "BBBB"})
    assert said.json()["answer"] == "unknown"
    page = client.get(f"/c/{BOX}", params={"r": "1", "k": "BBBB"}, headers=HTML)
    assert page.headers["content-type"].startswith("text/html")
    assert "<strong>Unknown</strong>" in page.text
    assert "Collections desk" in page.text
    assert "<script" not in page.text
    assert "default-src 'none'" in page.headers["content-security-policy"]


def test_neither_contents_nor_location_are_told(client: httpx.Client) -> None:
    """Whoever finds a card learns what it may harm, not what is worth taking."""
    page = client.get(f"/c/{BOX}", headers=HTML).text
    assert "Marlinspike" not in page
    assert client.get(f"/api/containers/{BOX}").json()["record"]["location"][0] not in page


def test_hostile_signs_stay_signs(client: httpx.Client) -> None:
    """A number that nobody knows comes back as text."""
    page = client.get("/c/%3Cscript%3Ealert(1)%3C/script%3E", headers=HTML).text
    assert "<script" not in page
    assert "&lt;script&gt;" in page


def test_who_tries_number_after_number_is_turned_away(client: httpx.Client) -> None:
    """Sixty a minute are answered; known and unknown numbers count alike."""
    codes = [client.get(f"/c/N-{number}").status_code for number in range(61)]
    assert codes[:60] == [200] * 60
    assert codes[60] == 429
    assert problem_of(client.get(f"/c/{BOX}"))["code"] == "too-often"
    assert client.get("/health").status_code == 200


def test_the_page_is_small_and_leads_into_the_house(client: httpx.Client) -> None:
    """All of it in one answer below 30 KB; at this machine there is a way to the container."""
    page = client.get(f"/c/{BOX}", headers=HTML)
    assert len(page.content) < 30_000
    assert "set-cookie" not in page.headers
    assert f'href="/containers/{BOX}"' in page.text
    assert "href" not in client.get("/c/B-999", headers=HTML).text


def test_the_tag_of_an_object_is_answered(client: httpx.Client) -> None:
    """Its number leads to the same page, and from there to the object."""
    said = client.get(f"/c/{SPIKE}").json()
    assert (said["is_tag"], said["answer"]) == (True, "unknown")
    assert f'href="/objects/{SPIKE}"' in client.get(f"/c/{SPIKE}", headers=HTML).text
