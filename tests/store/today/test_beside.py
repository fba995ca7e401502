"""Tests for what today's card beside a printed one says."""

from __future__ import annotations

from sqlalchemy import Connection

from service.store.printed.card import NewRun
from service.store.printed.runs import save_run
from service.store.today.beside import load_beside
from service.store.today.note import Noted, save_today
from service.store.today.stale import CARDS, load_stale
from tests.store.made import LATER
from tests.store.printed.made import END_1, LID


def test_only_what_is_noted_is_given(connection: Connection) -> None:
    """The fingerprint of today with the container's revision; without a note nothing."""
    lid, end = save_run(connection, NewRun((LID, END_1)), stamp=LATER)
    as_of = load_stale(connection, CARDS, limit=3).as_of
    save_today(connection, {"B-001": {("lid-card", 1): Noted("a" * 64)}}, as_of=as_of)
    found = load_beside(connection, [lid.card_id, end.card_id])
    assert found == {lid.card_id: ("a" * 64, LID.revision)}
    assert load_beside(connection, []) == {}
