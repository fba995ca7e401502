from __future__ import annotations

import pytest
from sqlalchemy import Connection, update
from sqlalchemy.exc import DBAPIError

from service.store.people.tables import users
from tests.store.people.made import make_user


def test_no_other_role_is_kept(connection: Connection) -> None:
    """The database refuses a role that the code does not know."""
    make_user(connection)
    with pytest.raises(DBAPIError, match="role_is_known"):
        connection.execute(update(users).values(role="owner"))


def test_two_names_that_look_alike_are_one(connection: Connection) -> None:
    """The database refuses a second user under the same compared name."""
    make_user(connection)
    make_user(connection, "Ben Marl")
    with pytest.raises(DBAPIError, match="name_key"):
        connection.execute(update(users).values(name_key="ada quill"))
