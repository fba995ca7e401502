from __future__ import annotations

import pytest
from alembic.operations import Operations
from alembic.runtime.migration import MigrationContext
from sqlalchemy import Connection, insert, text
from sqlalchemy.exc import DBAPIError

from service.store.kept.check_tables import check_results
from service.store.kept.checks import Check, load_checks, load_done, save_check
from service.store.migrations.versions import r0004_check_results
from tests.store.made import MOMENT, STAMP


def test_what_was_noted_before_has_no_results(connection: Connection) -> None:
    """A check from before says that somebody looked and no more, so that nothing is invented."""
    before = Check("B-001", MOMENT.date(), "moth on the felt", STAMP)
    save_check(connection, before)
    connection.execute(text("DROP TABLE check_results"))
    with Operations.context(MigrationContext.configure(connection)):
        r0004_check_results.upgrade()
    assert load_checks(connection, "B-001") == (before,)
    assert load_done(connection) == {}


def test_no_other_result_is_kept(connection: Connection) -> None:
    """The database refuses a result that nobody can read."""
    save_check(connection, Check("B-001", MOMENT.date(), "", STAMP))
    row = {"check_id": 1, "kind": "pests", "result": "perhaps", "note": ""}
    with pytest.raises(DBAPIError, match="result_is_known"):
        connection.execute(insert(check_results).values(row))
