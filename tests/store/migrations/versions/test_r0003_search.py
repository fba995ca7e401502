from __future__ import annotations

import pytest
from alembic.operations import Operations
from alembic.runtime.migration import MigrationContext
from sqlalchemy import Connection, text

from service.store.lists.search import search
from service.store.migrations.versions import r0003_search
from tests.store.made import BOXES, HAT, LAMP, LEAD


def test_what_was_there_before_is_found(connection: Connection) -> None:
    """A store that had records before the index finds them all by it."""
    for name in r0003_search.TABLES:
        connection.execute(text(f"DROP TABLE {name}"))
    with Operations.context(MigrationContext.configure(connection)):
        r0003_search.upgrade()
    found = search(connection, "title of")
    assert {hit.object_number for hit in found.objects} == {LEAD, HAT, LAMP}
    assert [hit.container_number for hit in search(connection, "b").containers] == list(BOXES)


@pytest.mark.parametrize("database", ["sqlite", "postgresql"])
def test_each_database_has_its_own_index(database: str) -> None:
    """Either way both tables are made."""
    statements = " ".join(r0003_search.statements_for(database))
    assert all(name in statements for name in r0003_search.TABLES)
