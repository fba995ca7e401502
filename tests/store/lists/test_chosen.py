from __future__ import annotations

import pytest
from sqlalchemy import Connection

from service.errors import CursorError
from service.records.record import Collection, ContainerRecord, PackingRecord
from service.store.lists.chosen import Choice, choose_containers, count_wrong
from service.store.packing.save import save_packing
from service.store.printed.card import MadeCard, NewRun
from service.store.printed.runs import save_run
from service.store.printed.states import mark_attached
from service.store.save_records import save_records
from service.store.today.note import Noted, save_today
from service.store.today.stale import count_changes
from tests.store.made import LATER, STAMP


def _numbers(connection: Connection, choice: Choice, *, cursor: str = "") -> list[str]:
    page = choose_containers(connection, choice, limit=10, cursor=cursor)
    return [one.container_number for one in page.records]


@pytest.fixture(autouse=True)
def placed(connection: Connection) -> None:
    """Give two of the boxes a place, against the order of their numbers."""
    records = (
        ContainerRecord("B-001", title="Lamps", location=("Store 10",)),
        ContainerRecord("B-002", title="Hats", location=("Store 2",)),
    )
    save_records(connection, Collection(containers=records), stamp=STAMP)


def test_all_come_by_number_or_as_one_walks(connection: Connection) -> None:
    """Store 2 comes before Store 10, and what has no place last."""
    assert _numbers(connection, Choice()) == ["B-001", "B-002", "B-003"]
    assert _numbers(connection, Choice(is_walk=True)) == ["B-002", "B-001", "B-003"]


def test_words_narrow_the_list(connection: Connection) -> None:
    """Each must begin one of the container's; signs alone find nothing."""
    assert _numbers(connection, Choice("hat")) == ["B-002"]
    assert _numbers(connection, Choice("store lamp")) == ["B-001"]
    assert _numbers(connection, Choice("--")) == []


def test_empty_ones_are_those_in_which_nothing_lies(connection: Connection) -> None:
    """Never packed, or emptied since."""
    assert _numbers(connection, Choice(is_empty=True)) == ["B-003"]
    save_packing(connection, PackingRecord("B-001"), expected_revision=1, stamp=LATER)
    assert _numbers(connection, Choice(is_empty=True)) == ["B-001", "B-003"]


def test_wrong_ones_have_a_card_to_swap(connection: Connection) -> None:
    """A card whose fingerprint is the one noted is true; of another they are counted."""
    cards = (
        MadeCard("B-001", "lid-card", 1, "old", "{}"),
        MadeCard("B-002", "lid-card", 1, "x", "{}"),
    )
    for card in save_run(connection, NewRun(cards), stamp=STAMP):
        mark_attached(connection, card.card_id, stamp=STAMP)
    noted = {"B-001": {("lid-card", 1): Noted("new")}, "B-002": {("lid-card", 1): Noted("x")}}
    save_today(connection, noted, as_of=count_changes(connection))
    assert _numbers(connection, Choice(is_wrong=True)) == ["B-001"]
    assert count_wrong(connection, ["B-001", "B-002", "B-003"]) == {"B-001": 1}


@pytest.mark.parametrize("is_walk", [False, True])
def test_pages_join_without_gap(connection: Connection, *, is_walk: bool) -> None:
    """Each container stands on one page, whatever the order."""
    choice, cursor, found = Choice(is_walk=is_walk), "", list[str]()
    for _ in range(3):
        page = choose_containers(connection, choice, limit=1, cursor=cursor)
        found += [one.container_number for one in page.records]
        cursor = page.next_cursor
    assert found == _numbers(connection, choice)
    assert cursor == ""


def test_a_foreign_cursor_is_refused(connection: Connection) -> None:
    """Nobody writes one by hand."""
    with pytest.raises(CursorError):
        choose_containers(connection, Choice(), limit=1, cursor="b")
