from __future__ import annotations

import httpx

from tests.web.store.opened import BOX, EMPTY_BOX
from tests.web.views.opened import follow, send, show


def _card(client: httpx.Client) -> dict[str, str]:
    (card, *_) = client.get("/api/prints/1").json()["cards"]
    return {"card_of": BOX, "revision": str(card["revision"]), "letters": card["letters"]}


def test_card_and_box_are_scanned_one_after_the_other(printed: httpx.Client) -> None:
    """The card is kept in hand until the box says its number."""
    assert "Scan the card" in show(printed, "/attach/held")
    page = follow(printed, send(printed, "/attach/held", "/attach/hold", _card(printed)))
    assert "On which box is it?" in page
    send(printed, "/attach", "/attach/begin", {"run": "1"})
    answer = send(printed, "/attach/held", "/attach/scanned", {"container_number": BOX})
    assert f"is on {BOX}" in follow(printed, answer)
    assert "Scan the card" in show(printed, "/attach/held")


def test_the_wrong_box_is_caught(printed: httpx.Client) -> None:
    """Both numbers stand on the page, and nothing is marked."""
    fields = _card(printed) | {"container_number": EMPTY_BOX}
    page = send(printed, "/attach/held", "/attach/scanned", fields, status=409).text
    assert "Wrong box" in page
    assert BOX in page
    assert EMPTY_BOX in page
    states = {card["state"] for card in printed.get("/api/prints/1").json()["cards"]}
    assert states == {"made"}


def test_a_reader_types_the_whole_address(printed: httpx.Client) -> None:
    """The address of the card, and that of the label on the box."""
    card = _card(printed)
    query = f"r={card['revision']}&k={card['letters']}"
    address = f"https://collections.example/c/{BOX}?{query}"
    send(printed, "/attach/held", "/attach/hold", {"address": address})
    box = {"container_number": f"https://collections.example/c/{BOX}"}
    send(printed, "/attach/held", "/attach/scanned", box)


def test_what_is_no_code_is_told_beside_the_field(printed: httpx.Client) -> None:
    """So is a box that was not named, and a card that nobody printed."""
    page = send(printed, "/attach/held", "/attach/hold", {"address": "x"}, status=422).text
    assert 'href="#field-address"' in page
    page = send(printed, "/attach/held", "/attach/scanned", _card(printed), status=422).text
    assert 'href="#field-container_number"' in page
    other = _card(printed) | {"letters": "XXXX", "container_number": BOX}
    page = send(printed, "/attach/held", "/attach/scanned", other, status=422).text
    assert "XXXX" in page
    assert "Scan the card" in send(printed, "/attach", "/attach/scanned", {}, status=200).text
