from __future__ import annotations

import httpx

from tests.web.views.opened import follow, send, show


def _states(client: httpx.Client) -> dict[int, str]:
    return {card["card"]: card["state"] for card in client.get("/api/prints/1").json()["cards"]}


def test_a_walk_is_begun_with_a_run(printed: httpx.Client) -> None:
    """The list tells where to go, what to put on, and how many are left."""
    assert "Walk with run 1" in show(printed, "/attach")
    page = follow(printed, send(printed, "/attach", "/attach/begin", {"run": "1"}))
    assert "4 cards left" in page
    assert "It is on" in page
    page = follow(printed, send(printed, "/attach", "/attach/end", {}))
    assert "still waits" in page
    assert "Walk with run 1" in show(printed, "/attach")


def test_cards_are_ticked_off_and_taken_back(printed: httpx.Client) -> None:
    """One after the other or a whole box; a slip of the thumb is undone."""
    send(printed, "/attach", "/attach/begin", {"run": "1"})
    page = follow(printed, send(printed, "/attach", "/attach/card", {"cards": "1"}))
    assert "3 cards left" in page
    assert _states(printed)[1] == "attached"
    page = follow(printed, send(printed, "/attach", "/attach/undo", {"cards": "1"}))
    assert "4 cards left" in page
    page = follow(printed, send(printed, "/attach", "/attach/card", {"cards": "1-4"}))
    assert "Every card of this run is on" in page


def test_the_old_card_is_told_and_comes_back_with_undo(printed: httpx.Client) -> None:
    """Card 5 is a second copy of card 1, of other words: it takes its place."""
    send(printed, "/attach", "/attach/card", {"cards": "1"})
    page = follow(printed, send(printed, "/attach", "/attach/card", {"cards": "5"}))
    assert "Take off r1" in page
    assert 'name="replaced" value="1"' in page
    assert _states(printed)[1] == "withdrawn"
    send(printed, "/attach", "/attach/undo", {"cards": "5", "replaced": "1"})
    assert (_states(printed)[1], _states(printed)[5]) == ("attached", "made")


def test_a_whole_run_is_on(printed: httpx.Client) -> None:
    """One copy of each; said again, none of them waited but the spare."""
    page = follow(printed, send(printed, "/attach", "/attach/run", {"run": "1"}))
    assert "4 cards are on." in page
    assert list(_states(printed).values()).count("attached") == 4


def test_what_is_not_there_is_told(printed: httpx.Client) -> None:
    """Neither a run nor a card is made up."""
    send(printed, "/attach", "/attach/begin", {"run": "9"}, status=404)
    send(printed, "/attach", "/attach/card", {"cards": "99"}, status=404)
    send(printed, "/attach", "/attach/undo", {"cards": ""}, status=422)
    assert set(_states(printed).values()) == {"made"}
