from __future__ import annotations

from alembic.operations import Operations
from alembic.runtime.migration import MigrationContext
from sqlalchemy import Connection, text

from service.store.migrations.versions import r0005_standing
from service.store.today.note import load_unattached, save_today
from service.store.today.stale import CARDS, count_stale, load_stale
from tests.store.made import BOXES
from tests.store.today.test_note import NOTED


def test_the_note_is_made_anew(connection: Connection) -> None:
    """What was noted before is forgotten, and every container is to be worded once more."""
    save_today(connection, NOTED, as_of=load_stale(connection, CARDS, limit=3).as_of)
    assert count_stale(connection, CARDS) == 0
    with Operations.context(MigrationContext.configure(connection)):
        r0005_standing.upgrade()
    assert load_unattached(connection) == ()
    assert load_stale(connection, CARDS, limit=9).numbers == BOXES
    assert connection.execute(text("SELECT standing FROM today_cards")).all() == []
