from __future__ import annotations

from alembic.operations import Operations
from alembic.runtime.migration import MigrationContext
from sqlalchemy import Connection, text

from service.store.migrations.versions import r0007_people
from service.store.people.users import has_users, load_users
from tests.store.people.made import make_user


def test_a_store_from_before_has_nobody(connection: Connection) -> None:
    """The step adds no user by itself, and one can be added then."""
    for table in ("sessions", "tokens", "pairings", "users"):
        connection.execute(text(f"DROP TABLE {table}"))
    with Operations.context(MigrationContext.configure(connection)):
        r0007_people.upgrade()
    assert not has_users(connection)
    made = make_user(connection)
    assert load_users(connection) == (made,)
