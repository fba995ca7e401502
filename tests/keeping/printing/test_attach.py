"""Tests for saying what became of printed cards."""

from __future__ import annotations

import pytest

from service.cards.fingerprint import check_letters
from service.errors import CardStateError, NotFoundError, WrongContainerError
from service.keeping.printing.attach import (
    ScannedCard,
    attach_card,
    attach_run,
    attach_scanned,
    take_back,
)
from service.keeping.today import compose_today
from service.pages.ruler import Ruler
from service.store.handles import Connection
from service.store.printed.card import NewRun, PrintedCard, describe_card
from service.store.printed.runs import load_run, save_run
from service.store.tables import CardState
from tests.keeping.made import BOX, COVER
from tests.store.made import LATER


@pytest.fixture
def printed(connection: Connection, ruler: Ruler) -> tuple[PrintedCard, ...]:
    """Print two copies of every card of the box."""
    cards = compose_today(connection, ruler, [BOX]).standing_cards
    made = tuple(describe_card(card, copy=copy) for card in cards for copy in (1, 2))
    return save_run(connection, NewRun(made), stamp=LATER)


def scanned(card: PrintedCard) -> ScannedCard:
    """Give what the symbol of a card says."""
    made = card.made
    return ScannedCard(made.container_number, made.revision, check_letters(made.fingerprint))


def lid(cards: tuple[PrintedCard, ...]) -> PrintedCard:
    """Give the first copy of the lid card."""
    return next(card for card in cards if card.made.kind == "lid-card")


def test_scanning_card_and_container_attaches(
    connection: Connection, printed: tuple[PrintedCard, ...]
) -> None:
    """The card that was scanned is on its container now; a second copy replaces the first."""
    first = attach_scanned(connection, scanned(lid(printed)), container_number=BOX, stamp=LATER)
    assert (first.card.state, first.replaced) == (CardState.ATTACHED, None)
    second = attach_scanned(connection, scanned(lid(printed)), container_number=BOX, stamp=LATER)
    assert second.replaced is not None
    assert second.replaced.card_id == first.card.card_id
    assert second.replaced.state is CardState.WITHDRAWN


def test_a_card_on_the_wrong_box_is_caught(
    connection: Connection, printed: tuple[PrintedCard, ...]
) -> None:
    """A card of one container is never attached to another."""
    with pytest.raises(WrongContainerError, match=f"card of {BOX}; the container is {COVER}"):
        attach_scanned(connection, scanned(lid(printed)), container_number=COVER, stamp=LATER)


def test_a_card_nobody_printed_is_not_attached(connection: Connection) -> None:
    """Revision and letters must be those of a printed card."""
    with pytest.raises(NotFoundError, match="r7 KMTF"):
        attach_scanned(connection, ScannedCard(BOX, 7, "KMTF"), container_number=BOX, stamp=LATER)


def test_a_whole_run_is_attached_at_once(
    connection: Connection, printed: tuple[PrintedCard, ...]
) -> None:
    """One copy of each card is attached, the others wait."""
    attached = attach_run(connection, printed[0].run_id, stamp=LATER)
    assert len(attached) == 4
    states = [card.state for card in load_run(connection, printed[0].run_id)]
    assert (states.count(CardState.ATTACHED), states.count(CardState.MADE)) == (4, 4)
    with pytest.raises(NotFoundError, match="print run"):
        attach_run(connection, 999, stamp=LATER)


def test_an_attachment_is_taken_back(
    connection: Connection, printed: tuple[PrintedCard, ...]
) -> None:
    """The card waits again, and the one that had come off for it is on its box as before."""
    old, new = (card for card in printed if card.made.key == lid(printed).made.key)
    attach_card(connection, old.card_id, stamp=LATER)
    done = attach_card(connection, new.card_id, stamp=LATER)
    assert done.replaced is not None
    back = take_back(connection, new.card_id, replaced=done.replaced.card_id, stamp=LATER)
    states = {card.card_id: card.state for card in load_run(connection, old.run_id)}
    assert back.state is CardState.MADE
    assert states[old.card_id] is CardState.ATTACHED
    with pytest.raises(CardStateError):
        take_back(connection, new.card_id, stamp=LATER)


def test_only_a_card_of_the_same_place_comes_back(
    connection: Connection, printed: tuple[PrintedCard, ...]
) -> None:
    """Nothing is put on a lid in place of a label."""
    attach_card(connection, lid(printed).card_id, stamp=LATER)
    other = next(card for card in printed if card.made.kind == "end-label")
    with pytest.raises(NotFoundError, match="earlier card"):
        take_back(connection, lid(printed).card_id, replaced=other.card_id, stamp=LATER)
