"""Adding and changing users; somebody who may manage them is always left.

Nobody is ever taken out: the name stays in the history, so that no other person can get it.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from service.errors import LastManagerError, SignInError, UserNameError
from service.keeping.people.passwords import fits_password, hash_password
from service.store.handles import Connection
from service.store.history import Stamp, begin_change
from service.store.people.pairings import forget_pairings
from service.store.people.role import Role
from service.store.people.sessions import end_sessions
from service.store.people.users import (
    User,
    load_user,
    load_users,
    save_disabled,
    save_password,
    save_role,
    save_user,
)

LONGEST_NAME = 100


@dataclass(frozen=True, slots=True)
class NewUser:
    """A user to be added."""

    name: str
    role: Role
    password: str = field(repr=False)


def add_user(connection: Connection, new: NewUser, *, stamp: Stamp) -> User:
    """Add a user; the first has to be a manager, since from then on everybody has to sign in.

    Raises:
        UserNameError: When the name cannot stand in the history.
        PasswordError: When the password is too short or too long.
        UserTakenError: When somebody has that name.
        LastManagerError: When the first user would be no manager.
    """
    name = read_name(new.name)
    password_hash = hash_password(new.password)
    change = begin_change(connection, stamp)
    if new.role is not Role.MANAGE:
        _refuse_unmanaged(connection, name)
    return save_user(connection, change, name, role=new.role, password_hash=password_hash)


def change_role(connection: Connection, name: str, role: Role, *, stamp: Stamp) -> User:
    """Give a user another role, which holds from the next request of any of their sessions.

    Raises:
        NotFoundError: When there is no such user.
        LastManagerError: When nobody would be left to manage the users.
    """
    change = begin_change(connection, stamp)
    user = load_user(connection, name)
    if user.role is not role:
        if role is not Role.MANAGE:
            _refuse_unmanaged(connection, user.name)
        save_role(connection, change, user, role)
    return load_user(connection, name)


def disable_user(connection: Connection, name: str, *, stamp: Stamp) -> User:
    """Lock a user out and end all that signs them in; tokens of theirs do nothing any more.

    Raises:
        NotFoundError: When there is no such user.
        LastManagerError: When nobody would be left to manage the users.
    """
    change = begin_change(connection, stamp)
    user = load_user(connection, name)
    if not user.is_disabled:
        _refuse_unmanaged(connection, user.name)
        save_disabled(connection, change, user, disabled=True)
        _sign_out_everywhere(connection, user)
    return load_user(connection, name)


def enable_user(connection: Connection, name: str, *, stamp: Stamp) -> User:
    """Let a user in again, with the password and the tokens from before.

    Raises:
        NotFoundError: When there is no such user.
    """
    change = begin_change(connection, stamp)
    user = load_user(connection, name)
    if user.is_disabled:
        save_disabled(connection, change, user, disabled=False)
    return load_user(connection, name)


def change_password(connection: Connection, name: str, password: str, *, stamp: Stamp) -> User:
    """Give a user another password, and end all their sessions.

    Raises:
        PasswordError: When the password is too short or too long.
        NotFoundError: When there is no such user.
    """
    password_hash = hash_password(password)
    change = begin_change(connection, stamp)
    user = load_user(connection, name)
    save_password(connection, change, user, password_hash)
    _sign_out_everywhere(connection, user)
    return load_user(connection, name)


def change_own_password(
    connection: Connection, name: str, *, current: str, password: str, stamp: Stamp
) -> User:
    """Give oneself another password, knowing the one there is.

    Raises:
        SignInError: When the current password is not the right one.
        PasswordError: When the new one is too short or too long.
        NotFoundError: When there is no such user.
    """
    if not fits_password(load_user(connection, name).password_hash, current):
        raise SignInError
    return change_password(connection, name, password, stamp=stamp)


def read_name(name: str) -> str:
    """Read a name as it will stand in the history.

    Raises:
        UserNameError: When it is empty, too long, or holds what cannot be seen.
    """
    read = " ".join(name.split())
    if not read.isprintable() or not 0 < len(read) <= LONGEST_NAME:
        raise UserNameError(name, most=LONGEST_NAME)
    return read


def _refuse_unmanaged(connection: Connection, name: str) -> None:
    """Refuse what would leave nobody to manage the users but the one of that name.

    Raises:
        LastManagerError: When there is no other.
    """
    for user in load_users(connection):
        if user.role is Role.MANAGE and not user.is_disabled and user.name != name:
            return
    raise LastManagerError(name)


def _sign_out_everywhere(connection: Connection, user: User) -> None:
    end_sessions(connection, user.user_id)
    forget_pairings(connection, user.user_id)
