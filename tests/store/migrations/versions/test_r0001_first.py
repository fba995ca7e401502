from __future__ import annotations

import pytest
from sqlalchemy import Connection, delete, update
from sqlalchemy.exc import DBAPIError

from service.store.base.columns import metadata
from service.store.migrations.versions.r0001_first import guards_for
from tests.store.made import changes


@pytest.mark.parametrize("table", ["history", "packings", "places"])
@pytest.mark.parametrize("verb", ["UPDATE", "DELETE"])
def test_what_is_only_added_to_cannot_change(connection: Connection, table: str, verb: str) -> None:
    """The database itself refuses to change or take away a row of the past."""
    rows = metadata.tables[table]
    column = "position" if table == "places" else "revision"
    statement = update(rows).values({column: 7}) if verb == "UPDATE" else delete(rows)
    with pytest.raises(DBAPIError, match=f"{table} is only added to"):
        connection.execute(statement)


@pytest.mark.parametrize("database", ["sqlite", "postgresql"])
def test_every_such_table_has_a_guard(database: str) -> None:
    """Either database is told to guard the same tables against both verbs."""
    statements = [line for line in guards_for(database) if line.startswith("CREATE TRIGGER")]
    guarded = {
        (table, verb)
        for table in metadata.tables
        for verb in ("UPDATE", "DELETE")
        if any(verb in line and f" ON {table} " in line for line in statements)
    }
    tables = ("history", "packings", "places")
    assert guarded == {(table, verb) for table in tables for verb in ("UPDATE", "DELETE")}


def test_changes_are_counted_from_nothing(connection: Connection) -> None:
    """The counter is there from the start; filling the store was its first change."""
    assert changes(connection) == 1
