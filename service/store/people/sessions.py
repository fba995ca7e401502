"""Sessions as they are kept: found by the SHA-256 of their secret, ended by going away.

A secret of 128 random bits or more needs no slow hash and no comparison in constant time: what is
looked up is a digest, of which nobody can choose the first characters.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, Select, delete, insert, select, update

from service.store.canonical import check_text
from service.store.people.tables import sessions


@dataclass(frozen=True, slots=True)
class Session:
    """Somebody signed in on a device, until it is left alone too long or `ends_at` has come."""

    sha256: str
    user_id: int
    device: str
    began_at: datetime
    last_used: datetime
    ends_at: datetime


def save_session(connection: Connection, session: Session) -> None:
    """Keep a new session."""
    values = {name: getattr(session, name) for name in Session.__slots__}
    check_text(session.device)
    connection.execute(insert(sessions).values(values))


def find_session(connection: Connection, sha256: str) -> Session | None:
    """Find a session, whether or not its time is over."""
    query = select(sessions).where(sessions.c.sha256 == sha256)
    return next(_read(connection, query), None)


def load_sessions(connection: Connection, user_id: int) -> tuple[Session, ...]:
    """Load the sessions of a user, the latest used first."""
    query = select(sessions).where(sessions.c.user_id == user_id)
    return tuple(_read(connection, query.order_by(sessions.c.last_used.desc())))


def note_used(connection: Connection, sha256: str, at: datetime) -> None:
    """Note when a session was last used."""
    connection.execute(update(sessions).where(sessions.c.sha256 == sha256).values(last_used=at))


def end_session(connection: Connection, sha256: str) -> None:
    """End a session; one that is gone stays so."""
    connection.execute(delete(sessions).where(sessions.c.sha256 == sha256))


def end_sessions(connection: Connection, user_id: int) -> None:
    """End all sessions of a user."""
    connection.execute(delete(sessions).where(sessions.c.user_id == user_id))


def forget_sessions(connection: Connection, *, ended: datetime, idle_since: datetime) -> None:
    """Forget the sessions that ended before a moment, or lay unused since another."""
    over = (sessions.c.ends_at <= ended) | (sessions.c.last_used <= idle_since)
    connection.execute(delete(sessions).where(over))


def _read(connection: Connection, query: Select[tuple[object, ...]]) -> Iterator[Session]:
    for row in connection.execute(query).mappings():
        yield Session(**row)
