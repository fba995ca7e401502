from __future__ import annotations

from pathlib import Path

from alembic.operations import Operations
from alembic.runtime.migration import MigrationContext
from sqlalchemy import insert, text

from service.store.base.columns import metadata
from service.store.migrations.versions import r0002_today
from service.store.open import open_folder, writing
from service.store.tables import change_counter, containers
from service.store.today.stale import CARDS, load_stale
from service.store.today.tables import today_cards, today_stale, today_wording


def test_what_was_there_before_is_still_to_be_worded(tmp_path: Path) -> None:
    """A store that had containers before the note marks all of them as of its last change."""
    engine = open_folder(tmp_path)
    newer = {today_cards, today_stale, today_wording}
    with writing(engine) as connection:
        metadata.create_all(
            connection, tables=[t for t in metadata.sorted_tables if t not in newer]
        )
        connection.execute(insert(change_counter).values(id=1, changes=7))
        texts = ("container_number", "title", "location", "sort_key", "location_key", "inside")
        row = {**dict.fromkeys(texts, "B-1"), "revision": 0, "record": "{}", "source": "{}"}
        connection.execute(insert(containers).values(row))
        with Operations.context(MigrationContext.configure(connection)):
            r0002_today.upgrade()
        assert load_stale(connection, CARDS, limit=9).numbers == ("B-1",)
        assert connection.execute(text("SELECT since FROM today_stale")).scalars().all() == [7]
    engine.dispose()
