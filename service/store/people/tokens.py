"""Tokens of programs as they are kept: by the SHA-256 of what is shown once."""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, Select, insert, select, update

from service.errors import NotFoundError
from service.store.canonical import check_text, dump_json
from service.store.people.role import Role
from service.store.people.tables import tokens, users


@dataclass(frozen=True, slots=True)
class Token:
    """What a program signs in with: whose it is, and the work it may do."""

    token_id: int
    user_id: int
    user_name: str
    name: str
    scopes: frozenset[Role]
    made_at: datetime
    last_used: datetime | None
    revoked_at: datetime | None


@dataclass(frozen=True, slots=True)
class NewToken:
    """A token to be kept."""

    sha256: str
    user_id: int
    name: str
    scopes: frozenset[Role]


def save_token(connection: Connection, new: NewToken, *, at: datetime) -> Token:
    """Keep a new token."""
    values = {
        "sha256": new.sha256,
        "user_id": new.user_id,
        "name": check_text(new.name),
        "scopes": dump_json([role.value for role in Role if role in new.scopes]),
        "made_at": at,
    }
    made = insert(tokens).values(values).returning(tokens.c.id)
    return load_token(connection, int(connection.execute(made).scalar_one()))


def find_token(connection: Connection, sha256: str) -> Token | None:
    """Find a token, revoked or not."""
    return next(iter(_read(connection, _query().where(tokens.c.sha256 == sha256))), None)


def load_token(connection: Connection, token_id: int) -> Token:
    """Load a token by its number.

    Raises:
        NotFoundError: When there is none of that number.
    """
    for found in _read(connection, _query().where(tokens.c.id == token_id)):
        return found
    raise NotFoundError(str(token_id), what="token")


def load_tokens(connection: Connection, user_id: int | None = None) -> tuple[Token, ...]:
    """Load the tokens of a user, or of everybody, oldest first."""
    query = _query()
    return _read(connection, query if user_id is None else query.where(users.c.id == user_id))


def note_token_used(connection: Connection, token_id: int, at: datetime) -> None:
    """Note when a token was last used."""
    connection.execute(update(tokens).where(tokens.c.id == token_id).values(last_used=at))


def save_revoked(connection: Connection, token_id: int, at: datetime) -> None:
    """Take a token back for ever."""
    connection.execute(update(tokens).where(tokens.c.id == token_id).values(revoked_at=at))


def _query() -> Select[tuple[object, ...]]:
    joined = select(tokens, users.c.name.label("user_name"))
    return joined.join(users, tokens.c.user_id == users.c.id).order_by(tokens.c.id)


def _read(connection: Connection, query: Select[tuple[object, ...]]) -> tuple[Token, ...]:
    return tuple(
        Token(
            row["id"],
            row["user_id"],
            row["user_name"],
            row["name"],
            frozenset(map(Role, json.loads(row["scopes"]))),
            row["made_at"],
            row["last_used"],
            row["revoked_at"],
        )
        for row in connection.execute(query).mappings()
    )
