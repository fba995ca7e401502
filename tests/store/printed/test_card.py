from __future__ import annotations

from service.cards.card import EndLabel
from service.cards.fingerprint import fingerprint_card
from service.cards.kept_text import card_from_text
from service.cards.kinds import CARD_KINDS, compose_cards
from service.contents.packing import Packing
from service.records.record import ContainerRecord, Museum
from service.store.history import Entry
from service.store.printed.card import describe_card, tell_card
from service.store.tables import CardState
from tests.store.printed.made import END_2


def test_a_card_is_described_whole() -> None:
    """The record of a card has its container, revision, side and fingerprint, and all it says."""
    packing = Packing(ContainerRecord("B-1", title="Leads"), 7, ())
    cards = compose_cards(packing, Museum(), kinds=CARD_KINDS)
    for card in cards:
        made = describe_card(card, copy=2)
        assert (made.container_number, made.kind, made.revision) == ("B-1", card.kind, 7)
        assert made.fingerprint == fingerprint_card(card)
        assert card_from_text(made.content) == card
        assert made.copy == 2
    sides = [describe_card(card).side for card in cards if isinstance(card, EndLabel)]
    assert sides == [1, 2]


def test_history_names_the_card() -> None:
    """The history says which card of which run it was."""
    assert tell_card(CardState.SPOILED, END_2, 5) == Entry(
        "card spoiled",
        container_number="B-001",
        revision=1,
        detail='{"copy":1,"kind":"end-label","run":5,"side":2}',
    )
