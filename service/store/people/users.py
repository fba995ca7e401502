"""Users as they are kept: read, added, changed, each change of rights in the history."""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass, field
from datetime import datetime

from sqlalchemy import Connection, RowMapping, exists, insert, select, update

from service.errors import NotFoundError, UserTakenError
from service.store.canonical import check_text, dump_json
from service.store.history import Change, Entry, write_history
from service.store.people.role import Role
from service.store.people.tables import users


@dataclass(frozen=True, slots=True)
class User:
    """Somebody who may use the store; `name` stands in the history for whoever acts."""

    user_id: int
    name: str
    role: Role
    password_hash: str = field(repr=False)
    is_disabled: bool
    added_at: datetime
    last_seen: datetime | None


def key_of(name: str) -> str:
    """Give a name as names are compared: case, width, spaces and accents as typed do not matter."""
    plain = " ".join(unicodedata.normalize("NFKC", name).split())
    return unicodedata.normalize("NFKC", plain.casefold())


def has_users(connection: Connection) -> bool:
    """Tell whether anybody was ever added; from then on everybody has to sign in."""
    return bool(connection.execute(select(exists().select_from(users))).scalar_one())


def find_user(connection: Connection, name: str) -> User | None:
    """Find a user by name, however it is capitalised.

    Raises:
        UnstorableTextError: When no name can be written so.
    """
    return _find_by(connection, name_key=check_text(key_of(name)))


def find_user_by_id(connection: Connection, user_id: int) -> User | None:
    """Find a user by key."""
    return _find_by(connection, id=user_id)


def load_user(connection: Connection, name: str) -> User:
    """Load a user by name.

    Raises:
        NotFoundError: When there is none of that name.
    """
    found = find_user(connection, name)
    if found is None:
        raise NotFoundError(name, what="user")
    return found


def load_users(connection: Connection) -> tuple[User, ...]:
    """Load all users, in the order of their names."""
    query = select(users).order_by(users.c.name_key)
    return tuple(_read(row) for row in connection.execute(query).mappings())


def save_user(
    connection: Connection, change: Change, name: str, *, role: Role, password_hash: str
) -> User:
    """Add a user.

    Raises:
        UserTakenError: When somebody has that name, or one that only looks different.
    """
    if find_user(connection, name) is not None:
        raise UserTakenError(name)
    values = {
        "name": check_text(name),
        "name_key": key_of(name),
        "role": role.value,
        "password": password_hash,
        "disabled": False,
        "added_at": change.stamp.at,
    }
    connection.execute(insert(users).values(values))
    tell(connection, change, "user added", name, role=role.value)
    return load_user(connection, name)


def save_role(connection: Connection, change: Change, user: User, role: Role) -> None:
    """Give a user another role."""
    _set(connection, user, role=role.value)
    tell(connection, change, "role changed", user.name, before=user.role.value, role=role.value)


def save_disabled(connection: Connection, change: Change, user: User, *, disabled: bool) -> None:
    """Lock a user out, or let one in again."""
    _set(connection, user, disabled=disabled)
    tell(connection, change, "user disabled" if disabled else "user enabled", user.name)


def save_password(connection: Connection, change: Change, user: User, password_hash: str) -> None:
    """Give a user another password."""
    save_hash(connection, user, password_hash)
    tell(connection, change, "password changed", user.name)


def save_hash(connection: Connection, user: User, password_hash: str) -> None:
    """Keep the same password under a hash of today's cost; no right changes by it."""
    _set(connection, user, password=password_hash)


def note_seen(connection: Connection, user_id: int, at: datetime) -> None:
    """Note when a user was last here."""
    connection.execute(update(users).where(users.c.id == user_id).values(last_seen=at))


def tell(connection: Connection, change: Change, verb: str, name: str, **more: object) -> None:
    """Write into the history what was done to the rights of somebody."""
    write_history(connection, change, [Entry(verb, detail=dump_json({"user": name, **more}))])


def _set(connection: Connection, user: User, **values: object) -> None:
    connection.execute(update(users).where(users.c.id == user.user_id).values(values))


def _find_by(connection: Connection, **wanted: object) -> User | None:
    query = select(users).filter_by(**wanted)
    for row in connection.execute(query).mappings():
        return _read(row)
    return None


def _read(row: RowMapping) -> User:
    return User(
        row["id"],
        row["name"],
        Role(row["role"]),
        row["password"],
        row["disabled"],
        row["added_at"],
        row["last_seen"],
    )
