from __future__ import annotations

from dataclasses import replace

import pytest
from sqlalchemy import Connection, update
from sqlalchemy.exc import IntegrityError

from service.errors import CardStateError, NotFoundError
from service.store.history import load_history
from service.store.printed.card import NewRun, PrintedCard
from service.store.printed.runs import load_attached, load_attached_tags, load_card, save_run
from service.store.printed.states import mark_attached, mark_spoiled, mark_waiting
from service.store.tables import CardState, printed_cards
from tests.store.made import LATER, STAMP, dump
from tests.store.printed.made import END_1, LID, OTHER, RUN, TAG


@pytest.fixture
def cards(connection: Connection) -> tuple[PrintedCard, ...]:
    """Give a run of four cards: the lid card, both ends, and another box."""
    return save_run(connection, RUN, stamp=STAMP)


def test_a_new_card_withdraws_the_old(
    connection: Connection, cards: tuple[PrintedCard, ...]
) -> None:
    """Of one container, kind and side one card is attached; the last one to be stuck on wins."""
    for card in cards:
        assert mark_attached(connection, card.card_id, stamp=STAMP) is None
    new = save_run(connection, RUN, stamp=LATER)[1]
    withdrawn = mark_attached(connection, new.card_id, stamp=LATER)
    assert withdrawn == load_card(connection, cards[1].card_id)
    assert (withdrawn.state, withdrawn.by, withdrawn.at) == (
        CardState.WITHDRAWN,
        LATER.actor,
        LATER.at,
    )
    attached = {card.card_id for card in load_attached(connection)}
    assert attached == {cards[0].card_id, new.card_id, cards[2].card_id, cards[3].card_id}
    assert [event.entry.verb for event in load_history(connection)[-2:]] == [
        "card withdrawn",
        "card attached",
    ]


def test_a_new_tag_withdraws_the_old(connection: Connection) -> None:
    """Of one object one tag is attached; that of another, and cards of boxes, stay as they are."""
    other = replace(TAG, object_number="PMM.77.3")
    for card in save_run(connection, NewRun((LID, TAG, other)), stamp=STAMP):
        assert mark_attached(connection, card.card_id, stamp=STAMP) is None
    (new,) = save_run(connection, NewRun((TAG,)), stamp=LATER)
    withdrawn = mark_attached(connection, new.card_id, stamp=LATER)
    assert withdrawn is not None
    assert (withdrawn.made, withdrawn.state) == (TAG, CardState.WITHDRAWN)
    assert [card.made for card in load_attached_tags(connection)] == [other, TAG]
    assert [card.made for card in load_attached(connection)] == [LID]


def test_attaching_twice_is_once(connection: Connection, cards: tuple[PrintedCard, ...]) -> None:
    """Saying again that a card is attached changes nothing."""
    mark_attached(connection, cards[0].card_id, stamp=STAMP)
    before = dump(connection)
    assert mark_attached(connection, cards[0].card_id, stamp=STAMP) is None
    assert dump(connection) == before


def test_a_withdrawn_card_can_come_back(
    connection: Connection, cards: tuple[PrintedCard, ...]
) -> None:
    """A card put back on its box is attached again, and the other withdrawn."""
    new = save_run(connection, RUN, stamp=LATER)[0]
    for card in (cards[0], new, cards[0]):
        mark_attached(connection, card.card_id, stamp=LATER)
    assert [card.card_id for card in load_attached(connection)] == [cards[0].card_id]


def test_what_was_said_by_mistake_is_taken_back(
    connection: Connection, cards: tuple[PrintedCard, ...]
) -> None:
    """A card that is on nothing waits again, and is told so; one that waits cannot wait anew."""
    mark_attached(connection, cards[0].card_id, stamp=STAMP)
    mark_waiting(connection, cards[0].card_id, stamp=LATER)
    assert load_attached(connection) == ()
    assert load_card(connection, cards[0].card_id).state is CardState.MADE
    assert load_history(connection)[-1].entry.verb == "card made"
    with pytest.raises(CardStateError, match="made"):
        mark_waiting(connection, cards[0].card_id, stamp=LATER)


def test_a_spoiled_card_is_gone(connection: Connection, cards: tuple[PrintedCard, ...]) -> None:
    """A spoiled card is on no container and can neither be attached nor spoiled again."""
    mark_attached(connection, cards[0].card_id, stamp=STAMP)
    mark_spoiled(connection, cards[0].card_id, stamp=LATER)
    assert load_attached(connection) == ()
    for again in (mark_attached, mark_spoiled):
        with pytest.raises(CardStateError, match="spoiled"):
            again(connection, cards[0].card_id, stamp=LATER)
    with pytest.raises(NotFoundError):
        mark_spoiled(connection, 999, stamp=LATER)


def test_the_database_holds_one_attached_card(
    connection: Connection, cards: tuple[PrintedCard, ...]
) -> None:
    """Even past the code, a second attached card of one place cannot be written."""
    assert [card.made for card in cards[:2]] == [LID, END_1]
    assert cards[3].made == OTHER
    save_run(connection, RUN, stamp=LATER)
    with pytest.raises(IntegrityError):
        connection.execute(update(printed_cards).values(state=CardState.ATTACHED.value))
