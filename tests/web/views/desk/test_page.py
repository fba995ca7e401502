from __future__ import annotations

import re

import httpx
import pytest

from tests.web.store.opened import BOX, EMPTY_BOX, SPIKE
from tests.web.views.opened import show


@pytest.mark.slow
def test_the_desk_says_what_there_is_to_print(client: httpx.Client) -> None:
    """What was never printed is counted, and each way to choose has its link."""
    page = show(client, "/print")
    assert "never printed" in page
    for what in ("reprints", "lacking", "containers", "objects", "card", "all"):
        assert f"/print?what={what}" in page


@pytest.mark.slow
def test_what_is_missing_is_ticked(client: httpx.Client) -> None:
    """Each card of the box has its tick; nothing is wrong yet, which is told too."""
    page = show(client, "/print?what=lacking")
    assert f'value="lid-card:1:{BOX}" checked' in page
    assert f'value="end-label:2:{BOX}" checked' in page
    assert "tells the truth" in show(client, "/print?what=reprints")


def test_boxes_are_found_and_chosen(client: httpx.Client) -> None:
    """What is chosen goes along with the search; a number that nobody knows is told."""
    page = show(client, f"/print?containers={BOX}&q=spare")
    assert f'name="containers" value="{BOX}" checked' in page
    assert f'<input type="checkbox" name="containers" value="{EMPTY_BOX}">' in page
    page = show(client, f"/print?what=containers&typed={BOX}%0AB-99")
    assert "Not in the store: B-99" in page
    assert f'name="containers" value="{BOX}" checked' in page


def test_usual_kinds_are_ticked_and_the_others_say_what_they_are_for(
    client: httpx.Client,
) -> None:
    """Nobody has to know the kinds to print the right ones."""
    page = show(client, f"/print?containers={BOX}")
    assert len(re.findall(r'name="usual" value="[^"]+" checked', page)) == 5
    assert 'name="extra" value="warning-label">' in page
    assert "where something inside can hurt" in page


def test_objects_get_tags(client: httpx.Client) -> None:
    """Whether they are packed or not."""
    page = show(client, f"/print?objects={SPIKE}")
    assert f'name="objects" value="{SPIKE}" checked' in page


@pytest.mark.slow
def test_a_lost_card_is_chosen_by_its_number_or_its_box(printed: httpx.Client) -> None:
    """By its number it is ticked; by its box the cards that are on it can be chosen."""
    page = show(printed, "/print?card=1")
    assert 'name="card" value="1" checked' in page
    assert "No card is attached to it" in show(printed, f"/print?what=card&containers={BOX}")
    printed.post("/api/cards/1/attached")
    page = show(printed, f"/print?what=card&containers={BOX}")
    assert 'name="card" value="1" >' in page
    show(printed, "/print?card=999", status=404)
