"""What holds for every printed card: it has reasons to be printed again if it is wrong."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings

from service.cards.card import Card
from service.cards.changes.list_changes import list_changes
from service.cards.fingerprint import fingerprint_card
from service.cards.kept_text import card_as_text, card_from_text
from tests.cards.changes.made import SECRET, card_pairs, cards, vary

pytestmark = pytest.mark.timeout(300)

RESTLESS = re.compile(r"\.head\.(revision|packed|query|check_letters)$")
NEVER_SAID = re.compile(r"\b(safe|gone|harmless|removed)\b", re.IGNORECASE)


@given(card_pairs())
def test_reasons_if_and_only_if_fingerprints_differ(pair: tuple[Card, Card]) -> None:
    """A card that says something else has a reason; one that says the same has none."""
    printed, today = pair
    differs = fingerprint_card(printed) != fingerprint_card(today)
    assert bool(list_changes(printed, today)) is differs
    assert list_changes(printed, printed) == ()


@settings(max_examples=25)
@given(cards())
def test_any_single_field_gives_a_reason(card: Card) -> None:
    """Whatever one field says otherwise is told both ways, but for what the print leaves out."""
    for path, other in vary(card):
        told = not RESTLESS.search(path)
        assert (fingerprint_card(other) != fingerprint_card(card)) is told, path
        assert bool(list_changes(card, other)) is told, path
        assert bool(list_changes(other, card)) is told, path


@given(card_pairs())
def test_reasons_are_in_order_and_each_told_once(pair: tuple[Card, Card]) -> None:
    """The most urgent reasons come first, no sentence comes twice, and none promises anything."""
    changes = list_changes(*pair)
    assert [change.urgency for change in changes] == sorted(change.urgency for change in changes)
    assert len({change.words for change in changes}) == len(changes)
    assert [change.words for change in changes if NEVER_SAID.search(change.words)] == []


@given(card_pairs())
def test_nothing_discreet_leaves_the_house(pair: tuple[Card, Card]) -> None:
    """Words for outside tell neither title, name nor hazard of an object that must be asked for."""
    for change in list_changes(*pair):
        assert SECRET not in change.outside_words
        assert "firearm" not in change.outside_words.lower()


@given(cards())
def test_a_card_comes_back_from_its_text(card: Card) -> None:
    """Every card that can be composed is kept whole, with its fingerprint and its letters."""
    assert card_from_text(card_as_text(card)) == card


@given(card_pairs())
def test_texts_are_equal_only_for_equal_cards(pair: tuple[Card, Card]) -> None:
    """Two cards have one text if, and only if, they are equal."""
    printed, today = pair
    assert (card_as_text(printed) == card_as_text(today)) is (printed == today)
