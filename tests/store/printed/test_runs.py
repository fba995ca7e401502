from __future__ import annotations

from dataclasses import replace

import pytest
from sqlalchemy import Connection, select
from sqlalchemy.exc import IntegrityError

from service.errors import NotFoundError
from service.store.history import load_history
from service.store.printed.card import NewRun
from service.store.printed.runs import (
    find_printed,
    load_attached,
    load_attached_tags,
    load_card,
    load_run,
    save_run,
)
from service.store.printed.states import mark_attached
from service.store.tables import CardState, print_runs
from tests.store.made import LATER, STAMP
from tests.store.printed.made import LID, OTHER, RUN, TAG


def test_a_run_is_kept_whole(connection: Connection) -> None:
    """Every card is kept in its order with its content, and so is what was asked for and made."""
    cards = save_run(connection, RUN, stamp=LATER)
    assert tuple(card.made for card in cards) == RUN.cards
    assert {(card.state, card.by, card.at) for card in cards} == {
        (CardState.MADE, LATER.actor, LATER.at)
    }
    assert load_run(connection, cards[0].run_id) == cards
    assert load_card(connection, cards[1].card_id) == cards[1]
    (row,) = connection.execute(select(print_runs.c.options, print_runs.c.files))
    assert tuple(row) == ('{"p":"A4"}', f'[["lid-cards.pdf","{"a" * 64}",12345,""]]')
    verbs = [event.entry.verb for event in load_history(connection)[-4:]]
    assert verbs == ["card made"] * 4


def test_a_run_of_unknown_things_is_refused(connection: Connection) -> None:
    """A container that is in no record has no cards; a card stands once in its run."""
    with pytest.raises(NotFoundError, match="B-999"):
        save_run(connection, NewRun((replace(LID, container_number="B-999"),)), stamp=STAMP)
    with pytest.raises(NotFoundError, match=r"object 'X\.999'"):
        save_run(connection, NewRun((replace(TAG, object_number="X.999"),)), stamp=STAMP)
    with pytest.raises(NotFoundError, match="printed card '77'"):
        load_card(connection, 77)
    for twice in (LID, TAG):
        with pytest.raises(IntegrityError), connection.begin_nested():
            save_run(connection, NewRun((twice, twice)), stamp=STAMP)


def test_attached_cards_of_some(connection: Connection) -> None:
    """What is on the containers now is loaded for all of them, or for those named."""
    cards = save_run(connection, RUN, stamp=STAMP)
    assert load_attached(connection) == ()
    for card in (cards[0], cards[3]):
        mark_attached(connection, card.card_id, stamp=STAMP)
    assert [card.made for card in load_attached(connection)] == [LID, OTHER]
    assert [card.made for card in load_attached(connection, ["B-002"])] == [OTHER]


def test_a_tag_is_that_of_its_object(connection: Connection) -> None:
    """It is no card of any container; the history tells of it under its object."""
    (lid, tag) = save_run(connection, NewRun((LID, TAG)), stamp=STAMP)
    assert (tag.made, tag.made.key) == (TAG, ("X.112", "object-tag", 1))
    for card in (lid, tag):
        mark_attached(connection, card.card_id, stamp=STAMP)
    assert [card.made for card in load_attached(connection)] == [LID]
    assert [card.made for card in load_attached_tags(connection)] == [TAG]
    assert [card.made for card in load_attached_tags(connection, ["X.112"])] == [TAG]
    assert load_attached_tags(connection, ["PMM.77.3"]) == ()
    assert [card.made for card in find_printed(connection, "B-001")] == [LID]
    told = load_history(connection, object_number="X.112")[-2:]
    assert [(event.entry.verb, event.entry.revision) for event in told] == [
        ("card made", None),
        ("card attached", None),
    ]
