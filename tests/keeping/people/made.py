"""People that the tests begin with, and their passwords."""

from __future__ import annotations

from service.keeping.people.users import NewUser, add_user
from service.store.handles import Connection
from service.store.people.role import Role
from service.store.people.users import User
from tests.store.made import STAMP

ADA, BEN = "Ada Quill", "Ben Marl"
PASSWORD = "nine lamps by the harbour"  # noqa: S105 - the tests' own
OTHER_PASSWORD = "four ropes and a whistle"  # noqa: S105 - the tests' own


def add_manager(connection: Connection, name: str = ADA) -> User:
    """Add a manager with the usual password."""
    return add_user(connection, NewUser(name, Role.MANAGE, PASSWORD), stamp=STAMP)


def add_somebody(connection: Connection, name: str = BEN, role: Role = Role.VIEW) -> User:
    """Add a user with the usual password."""
    return add_user(connection, NewUser(name, role, PASSWORD), stamp=STAMP)
