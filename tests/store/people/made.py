"""Users that the tests of people begin with."""

from __future__ import annotations

from sqlalchemy import Connection

from service.store.history import begin_change
from service.store.people.role import Role
from service.store.people.users import User, save_user
from tests.store.made import STAMP


def make_user(connection: Connection, name: str = "Ada Quill", role: Role = Role.MANAGE) -> User:
    """Keep a user whose password nobody knows."""
    change = begin_change(connection, STAMP)
    return save_user(connection, change, name, role=role, password_hash="$argon2id$none")  # noqa: S106
