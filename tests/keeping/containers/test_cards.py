"""Tests for how the cards of one container stand."""

from __future__ import annotations

from service.keeping.containers.cards import CardFate, judge_cards
from service.keeping.repack import Seen, put_in
from service.keeping.today import compose_today
from service.pages.ruler import Ruler
from service.records.record import PlaceRecord
from service.store.handles import Connection
from service.store.printed.card import NewRun, describe_card
from service.store.printed.runs import save_run
from tests.keeping.made import BOX, attach_all
from tests.store.made import LATER, STAMP


def _fates(connection: Connection, ruler: Ruler) -> dict[tuple[str, int], CardFate]:
    cards = judge_cards(connection, ruler, BOX).cards
    return {(card.kind, card.side): card.fate for card in cards}


def test_each_card_goes_from_lacking_to_waiting_to_true(
    connection: Connection, ruler: Ruler
) -> None:
    """Never printed, printed, attached: in the order of reading."""
    assert list(_fates(connection, ruler)) == [
        ("lid-card", 1),
        ("end-label", 1),
        ("end-label", 2),
        ("contents-list", 1),
    ]
    assert set(_fates(connection, ruler).values()) == {CardFate.LACKING}
    today = compose_today(connection, ruler, [BOX])
    made = NewRun(tuple(describe_card(card) for card in today.standing_cards))
    save_run(connection, made, stamp=STAMP)
    assert set(_fates(connection, ruler).values()) == {CardFate.WAITING}
    attach_all(connection, ruler, BOX)
    assert set(_fates(connection, ruler).values()) == {CardFate.TRUE}


def test_a_wrong_card_says_why(connection: Connection, ruler: Ruler) -> None:
    """What was put in since is named; the letters are those of the card as it would be now."""
    attach_all(connection, ruler, BOX)
    before = judge_cards(connection, ruler, BOX).cards[0]
    put_in(connection, Seen(BOX, 1), PlaceRecord("X.1"), stamp=LATER)
    lid = judge_cards(connection, ruler, BOX).cards[0]
    assert (lid.kind, lid.fate) == ("lid-card", CardFate.WRONG)
    assert any("X.1" in change.words for change in lid.changes)
    assert lid.letters != before.letters
