from __future__ import annotations

import httpx
import pytest

from service.web.views.pack.choose import read_label
from tests.web.store.opened import BOX
from tests.web.views.opened import HTML, follow, send, show


@pytest.mark.parametrize(
    ("text", "number"),
    [
        (" B-027 ", "B-027"),
        ("https://portmerrow.example/c/PM/7%20a?r=7&k=KMTF", "PM/7 a"),
        ("http://127.0.0.1:8000/c/B-027", "B-027"),
        ("https://portmerrow.example/other", "https://portmerrow.example/other"),
    ],
)
def test_a_label_is_read_as_number_or_address(text: str, number: str) -> None:
    """What a phone reads from a label may be pasted whole."""
    assert read_label(text) == number


def test_a_container_is_opened_by_its_number(client: httpx.Client) -> None:
    """An unknown one stands in both forms, to be corrected or begun."""
    assert "What are you packing?" in show(client, "/pack")
    opened = client.get("/pack", params={"container": BOX}, headers=HTML)
    assert opened.headers["location"] == f"/pack/table?container={BOX}"
    page = show(client, "/pack?container=B-999", status=404)
    assert "There is no container B-999" in page
    assert page.count('value="B-999"') == 2


def test_a_new_one_is_begun(client: httpx.Client) -> None:
    """With a number of its own and a kind."""
    fields = {"number": "N-1", "kind": "tube"}
    page = follow(client, send(client, "/pack", "/pack/new", fields))
    assert "N-1 is begun" in page
    assert client.get("/api/containers/N-1").json()["record"]["kind"] == "tube"
    again = send(client, "/pack", "/pack/new", fields, status=422)
    assert "N-1 is there already" in again.text
    assert "number of its own" in send(client, "/pack", "/pack/new", {}, status=422).text
