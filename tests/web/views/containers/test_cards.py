from __future__ import annotations

from service.cards.changes.change import Change, ChangeKind, Urgency
from service.errors import ContentsError
from service.keeping.containers.cards import CardFate, ContainerCard, ContainerCards
from service.web.views.containers.cards import show_cards

CARDS = (
    ContainerCard("lid-card", 1, CardFate.WRONG, letters="KMTF"),
    ContainerCard("end-label", 1, CardFate.TRUE, letters="ABCD"),
    ContainerCard("end-label", 2, CardFate.LACKING, letters="ABCD"),
    ContainerCard("side-card", 1, CardFate.WRONG),
)


def test_the_card_asked_for_is_pictured() -> None:
    """Its address changes with its letters and the revision; a card no longer due has none."""
    shown = show_cards(ContainerCards(CARDS), "A/1 b", revision=7, kind="end-label", side=2)
    assert [one.name for one in shown.cards] == [
        "Lid card",
        "End label 1",
        "End label 2",
        "Side card",
    ]
    assert shown.chosen is not None
    assert shown.chosen.picture == (
        "/api/containers/A/1%20b/preview?kind=end-label&side=2&page=1&width_px=900&r=7&k=ABCD"
    )
    assert shown.cards[3].picture == ""


def test_a_reason_that_cards_share_is_told_once() -> None:
    """In the order in which the cards stand."""
    moved, added = (Change(ChangeKind.MOVED, Urgency.CONTENTS, one) for one in ("moved", "added"))
    cards = (
        ContainerCard("lid-card", 1, CardFate.WRONG, (moved, added), letters="KMTF"),
        ContainerCard("contents-list", 1, CardFate.WRONG, (added,), letters="KMTF"),
    )
    shown = show_cards(ContainerCards(cards), "B-1", revision=1, kind="", side=1)
    assert shown.reasons == ("moved", "added")


def test_any_other_kind_shows_the_first() -> None:
    """Also where nothing, or nonsense, is asked for."""
    for kind in ("", "poster", "side-card"):
        shown = show_cards(ContainerCards(CARDS), "B-1", revision=1, kind=kind, side=1)
        assert shown.chosen is shown.cards[0]


def test_what_cannot_be_worded_is_told() -> None:
    """Then there may be no card at all."""
    failed = ContainerCards((), ContentsError("Nothing can be said."))
    shown = show_cards(failed, "B-1", revision=1, kind="", side=1)
    assert shown.chosen is None
    assert shown.failed.startswith("Nothing can be said.")
