"""Tokens: what programs sign in with, each for a part of what its user may do."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, field
from datetime import datetime

from service.errors import ScopeError
from service.keeping.people.secret import hash_secret, make_token_secret
from service.keeping.people.signing_in import NOTED_EVERY
from service.keeping.people.users import read_name
from service.store.handles import Connection
from service.store.history import Stamp, begin_change
from service.store.people.role import Role, roles_within
from service.store.people.tokens import (
    NewToken,
    Token,
    find_token,
    load_token,
    note_token_used,
    save_revoked,
    save_token,
)
from service.store.people.users import User, find_user_by_id, load_user, note_seen, tell


@dataclass(frozen=True, slots=True)
class MadeToken:
    """A token that has just been made, with the secret that is shown once."""

    token: Token
    secret: str = field(repr=False)


def make_token(
    connection: Connection, user_name: str, name: str, scopes: Collection[Role], *, stamp: Stamp
) -> MadeToken:
    """Make a token of a user, under a name that says what it is for.

    Raises:
        NotFoundError: When there is no such user.
        UserNameError: When the name of the token cannot be written down.
        ScopeError: When it is to do more than its user may, or nothing.
    """
    change = begin_change(connection, stamp)
    user = load_user(connection, user_name)
    allowed = roles_within(user.role)
    wanted = frozenset(scopes)
    if not wanted or not wanted <= allowed:
        raise ScopeError(_in_order(wanted), allowed=_in_order(allowed))
    secret = make_token_secret()
    new = NewToken(hash_secret(secret), user.user_id, read_name(name), wanted)
    token = save_token(connection, new, at=stamp.at)
    said = {"token": token.token_id, "called": token.name, "scopes": _in_order(wanted)}
    tell(connection, change, "token made", user.name, **said)
    return MadeToken(token, secret)


def revoke_token(connection: Connection, token_id: int, *, stamp: Stamp) -> Token:
    """Take a token back for ever; one that is taken back already stays so.

    Raises:
        NotFoundError: When there is no such token.
    """
    change = begin_change(connection, stamp)
    token = load_token(connection, token_id)
    if token.revoked_at is None:
        save_revoked(connection, token_id, stamp.at)
        tell(connection, change, "token revoked", token.user_name, token=token_id)
    return load_token(connection, token_id)


def find_token_user(connection: Connection, secret: str) -> tuple[Token, User] | None:
    """Find a token and whose it is; None where it was taken back or its user is disabled."""
    token = find_token(connection, hash_secret(secret))
    if token is None or token.revoked_at is not None:
        return None
    user = find_user_by_id(connection, token.user_id)
    return None if user is None or user.is_disabled else (token, user)


def is_token_use_due(token: Token, *, now: datetime) -> bool:
    """Tell whether the use of a token is to be written down again."""
    return token.last_used is None or now >= token.last_used + NOTED_EVERY


def note_token_use(connection: Connection, token: Token, *, now: datetime) -> None:
    """Write down that a token is used."""
    note_token_used(connection, token.token_id, now)
    note_seen(connection, token.user_id, now)


def _in_order(roles: Collection[Role]) -> list[str]:
    return [role.value for role in Role if role in roles]
