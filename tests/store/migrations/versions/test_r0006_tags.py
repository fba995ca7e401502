from __future__ import annotations

import pytest
from alembic.operations import Operations
from alembic.runtime.migration import MigrationContext
from sqlalchemy import Connection, insert, text, update
from sqlalchemy.exc import DBAPIError

from service.store.history import begin_change
from service.store.migrations.versions import r0001_first, r0006_tags
from service.store.printed.card import NewRun
from service.store.printed.runs import find_printed, load_attached, load_attached_tags, save_run
from service.store.printed.states import mark_attached
from service.store.tables import print_runs, printed_cards
from tests.store.made import LATER, STAMP
from tests.store.printed.made import LID, OTHER, TAG

KEPT = {"run_id": 1, "copy": 1, "side": 1, "revision": 1, "file": "", "places": "[]"}


@pytest.fixture
def upgraded(connection: Connection) -> Connection:
    """Give a store that had two cards, one of them attached, before the step."""
    for table in ("today_tags", "today_stale_tags", "printed_cards"):
        connection.execute(text(f"DROP TABLE {table}"))
    former = r0001_first._tables.tables["printed_cards"]  # noqa: SLF001 - it has no other name
    former.create(connection)
    change = begin_change(connection, STAMP)
    runs = {"id": 1, "at": STAMP.at, "actor_id": change.actor_id, "options": "{}", "files": "[]"}
    connection.execute(insert(print_runs).values(runs))
    for key, card in enumerate((LID, OTHER), start=1):
        row = {"container_id": key, "kind": card.kind, "fingerprint": card.fingerprint}
        row |= {"content": card.content, "state": "attached" if key == 1 else "made"}
        row |= {"state_actor_id": change.actor_id, "state_at": STAMP.at.isoformat()}
        connection.execute(insert(former).values({**KEPT, **row}))
    with Operations.context(MigrationContext.configure(connection)):
        r0006_tags.upgrade()
    return connection


def test_cards_from_before_are_kept(upgraded: Connection) -> None:
    """Each is still that of its container, and what was attached still is."""
    assert [card.made for card in load_attached(upgraded)] == [LID]
    assert [card.made for card in find_printed(upgraded, "B-002")] == [OTHER]
    assert load_attached_tags(upgraded) == ()


def test_tags_can_be_kept_from_now_on(upgraded: Connection) -> None:
    """A tag of an object stands beside them, attached once."""
    if upgraded.dialect.name == "postgresql":
        upgraded.execute(text("SELECT setval('print_runs_id_seq', 5)"))
    first, second = (save_run(upgraded, NewRun((TAG,)), stamp=LATER)[0] for _ in range(2))
    for card in (first, second):
        mark_attached(upgraded, card.card_id, stamp=LATER)
    assert [card.card_id for card in load_attached_tags(upgraded)] == [second.card_id]
    with pytest.raises(DBAPIError, match=r"uq_printed_cards_attached_tag|printed_cards\.object_id"):
        upgraded.execute(update(printed_cards).values(state="attached"))


@pytest.mark.parametrize(
    "owner", [{"container_id": 1, "object_id": 1}, {"container_id": None, "object_id": None}]
)
def test_a_card_is_of_one_thing(upgraded: Connection, owner: dict[str, int | None]) -> None:
    """The database refuses a card of a box and an object at once, and one of neither."""
    with pytest.raises(DBAPIError, match="is_of_one"):
        upgraded.execute(update(printed_cards).values(owner))
