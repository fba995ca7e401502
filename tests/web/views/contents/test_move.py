from __future__ import annotations

import httpx

from tests.web.store.opened import BOX, EMPTY_BOX, SPIKE
from tests.web.views.contents.packed import SPIKE_KEY, change, places_of, undo

MOVE = "/contents/move"


def test_an_object_moves_and_comes_back(client: httpx.Client) -> None:
    """Both containers get a revision; Undo moves it to where it lay."""
    page = change(client, MOVE, {"to": EMPTY_BOX, "to_layer": "2"}, key=SPIKE_KEY)
    assert f"{SPIKE} is in {EMPTY_BOX} now." in page
    assert places_of(client, EMPTY_BOX) == [(SPIKE, 2)]
    undo(client, page)
    assert (SPIKE, 1) in places_of(client)
    assert places_of(client, EMPTY_BOX) == []


def test_words_lead_to_a_choice_of_containers(client: httpx.Client) -> None:
    """By title; the object stays the one that is meant."""
    page = change(client, MOVE, {"to": "spare"}, key=SPIKE_KEY, status=422)
    assert f'name="to" value="{EMPTY_BOX}"' in page
    assert f'name="key" value="{SPIKE_KEY}"' in page


def test_where_it_cannot_go_is_told(client: httpx.Client) -> None:
    """Nowhere, or where it lies."""
    assert "Name the container" in change(client, MOVE, {"to": ""}, key=SPIKE_KEY, status=422)
    here = change(client, MOVE, {"to": BOX}, key=SPIKE_KEY, status=422)
    assert "in this one already" in here


def test_an_object_is_fetched_from_where_it_lies(client: httpx.Client) -> None:
    """As the page of the container offers that it was to be put into."""
    typed = {"origin": BOX, "origin_key": SPIKE_KEY, "layer": "3"}
    page = change(client, "/contents/move-here", typed, number=EMPTY_BOX)
    assert f"{SPIKE} was moved here from {BOX}." in page
    assert places_of(client, EMPTY_BOX) == [(SPIKE, 3)]
    undo(client, page)
    assert (SPIKE, 1) in places_of(client)
