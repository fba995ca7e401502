from __future__ import annotations

import pytest

from service.errors import NotFoundError
from service.keeping.printing.attach import attach_card
from service.keeping.printing.walk import plan_walk
from service.keeping.tags.today import compose_today_tags
from service.keeping.today import compose_today
from service.pages.ruler import Ruler
from service.store.handles import Connection
from service.store.printed.card import NewRun, PrintedCard, describe_card
from service.store.printed.runs import save_run
from service.store.printed.states import mark_spoiled
from tests.keeping.made import BOX, COVER, JAR, attach_all
from tests.store.made import LATER


@pytest.fixture
def printed(connection: Connection, ruler: Ruler) -> tuple[PrintedCard, ...]:
    """Print the cards of a garment cover and a box, two copies each, and a tag."""
    cards = (
        *compose_today(connection, ruler, [COVER]).standing_cards,
        *compose_today(connection, ruler, [BOX]).standing_cards,
    )
    tags = compose_today_tags(connection, ruler, [JAR]).cards.values()
    made = [describe_card(card, copy=copy) for card in (*cards, *tags) for copy in (1, 2)]
    return save_run(connection, NewRun(tuple(made)), stamp=LATER)


def test_stops_come_as_one_walks(connection: Connection, printed: tuple[PrintedCard, ...]) -> None:
    """What has a place comes first; a tag is put on at the box in which its object lies."""
    stops = plan_walk(connection, printed[0].run_id)
    assert [stop.container_number for stop in stops] == [BOX, COVER]
    assert stops[0].location == ("Store 2", "Bay 4")
    kinds = sorted(one.card.made.kind for one in stops[0].cards)
    assert kinds == ["contents-list", "end-label", "end-label", "lid-card", "object-tag"]


def test_what_is_done_comes_last(connection: Connection, printed: tuple[PrintedCard, ...]) -> None:
    """A spoiled copy leaves the other one to put on; of what is on, no second copy waits."""
    box = [card for card in printed if card.made.number in {BOX, JAR} and card.made.copy == 1]
    for card in box[:-1]:
        attach_card(connection, card.card_id, stamp=LATER)
    mark_spoiled(connection, box[-1].card_id, stamp=LATER)
    (left,) = plan_walk(connection, printed[0].run_id)[0].cards
    assert (left.card.made.key, left.card.made.copy) == (box[-1].made.key, 2)
    attach_card(connection, left.card.card_id, stamp=LATER)
    last = plan_walk(connection, printed[0].run_id)[-1]
    assert (last.container_number, last.cards, last.done) == (BOX, (), 5)


def test_what_comes_off_is_told(connection: Connection, ruler: Ruler) -> None:
    """The card that is on the box now is named beside the one that takes its place."""
    old = attach_all(connection, ruler, BOX)
    cards = compose_today(connection, ruler, [BOX]).standing_cards
    run = NewRun(tuple(map(describe_card, cards)))
    new = save_run(connection, run, stamp=LATER)
    (stop,) = plan_walk(connection, new[0].run_id)
    off = {one.comes_off.card_id for one in stop.cards if one.comes_off is not None}
    assert off == {card.card_id for card in old}


def test_a_run_that_is_not_there_is_told(connection: Connection) -> None:
    """Nobody walks for nothing."""
    with pytest.raises(NotFoundError, match="print run"):
        plan_walk(connection, 999)
