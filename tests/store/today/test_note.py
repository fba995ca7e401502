"""Tests for the note of what today's cards say."""

from __future__ import annotations

from dataclasses import replace

from sqlalchemy import Connection

from service.records.record import Collection, ContainerRecord
from service.store.printed.card import NewRun
from service.store.printed.runs import save_run
from service.store.printed.states import mark_attached
from service.store.save_records import save_records
from service.store.today.note import (
    Noted,
    Unattached,
    heed_wording,
    load_differing,
    load_unattached,
    load_wording,
    save_today,
)
from service.store.today.stale import CARDS, count_stale, load_stale
from tests.store.made import BOXES, LATER
from tests.store.printed.made import END_1, LID

NOTED = {
    "B-001": {
        ("lid-card", 1): Noted(LID.fingerprint),
        ("end-label", 1): Noted(END_1.fingerprint),
        ("warning-label", 1): Noted("c" * 64, standing=False),
    },
    "B-002": {("lid-card", 1): Noted("a" * 64)},
    "B-003": {},
}


def test_everything_new_is_to_be_worded(connection: Connection) -> None:
    """What was just recorded is marked; what is noted as of now is marked no more."""
    stale = load_stale(connection, CARDS, limit=2)
    assert stale.numbers == BOXES[:2]
    save_today(connection, NOTED, as_of=stale.as_of)
    assert count_stale(connection, CARDS) == 0


def test_what_changed_meanwhile_stays_marked(connection: Connection) -> None:
    """A container that changed after its cards were worded is not noted, and stays marked."""
    as_of = load_stale(connection, CARDS, limit=3).as_of
    changed = ContainerRecord("B-001", title="Lead")
    save_records(connection, Collection(containers=(changed,)), stamp=LATER)
    save_today(connection, NOTED, as_of=as_of)
    assert load_stale(connection, CARDS, limit=3).numbers == ("B-001",)
    assert [one.container_number for one in load_unattached(connection)] == ["B-002"]


def test_who_comes_late_writes_over_nothing(connection: Connection) -> None:
    """What somebody else has noted meanwhile is newer, or the same."""
    as_of = load_stale(connection, CARDS, limit=3).as_of
    save_today(connection, NOTED, as_of=as_of)
    save_today(connection, {"B-002": {("lid-card", 1): Noted("b" * 64)}}, as_of=as_of)
    save_run(connection, NewRun((replace(LID, container_number="B-002"),)), stamp=LATER)
    (waiting,) = load_unattached(connection, ["B-002"])
    assert waiting == Unattached("B-002", "lid-card", 1, is_made=True)


def test_other_wording_marks_everything(connection: Connection) -> None:
    """Cards worded by other rules are all asked anew, once."""
    save_today(connection, NOTED, as_of=load_stale(connection, CARDS, limit=3).as_of)
    assert heed_wording(connection, "1" * 64)
    assert (load_wording(connection), count_stale(connection, CARDS)) == ("1" * 64, 3)
    assert not heed_wording(connection, "1" * 64)


def test_attached_cards_that_differ_are_found(connection: Connection) -> None:
    """A card with another fingerprint, or one that is wanted no more, is found; others are not."""
    wrong = replace(LID, container_number="B-002")
    unwanted = replace(LID, container_number="B-003")
    cards = save_run(connection, NewRun((LID, wrong, unwanted)), stamp=LATER)
    for card in cards[:1] + cards[1:2] + cards[2:]:
        mark_attached(connection, card.card_id, stamp=LATER)
    save_today(connection, NOTED, as_of=load_stale(connection, CARDS, limit=3).as_of)
    assert {card.made.container_number for card in load_differing(connection)} == {"B-002", "B-003"}
    assert load_unattached(connection) == (Unattached("B-001", "end-label", 1, is_made=False),)


def test_what_is_made_on_request_is_never_missed(connection: Connection) -> None:
    """No container lacks it; once attached it is found like any other when it is wrong."""
    save_today(connection, NOTED, as_of=load_stale(connection, CARDS, limit=3).as_of)
    lacking = {(one.container_number, one.kind) for one in load_unattached(connection)}
    assert lacking == {("B-001", "lid-card"), ("B-001", "end-label"), ("B-002", "lid-card")}
    label = replace(LID, kind="warning-label")
    (made,) = save_run(connection, NewRun((label,)), stamp=LATER)
    assert load_differing(connection) == ()
    mark_attached(connection, made.card_id, stamp=LATER)
    assert [card.made.kind for card in load_differing(connection)] == ["warning-label"]
