"""Signing in and out, and who a session is of.

A session ends 12 hours after it was last used and 14 days after it began, whichever is first.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime, timedelta

from service.errors import SignInError
from service.keeping.people.passwords import fits_password, hash_password, is_outdated
from service.keeping.people.secret import hash_secret, make_session_secret
from service.store.canonical import check_text
from service.store.handles import Connection, Engine
from service.store.open import reading, writing
from service.store.people.sessions import (
    Session,
    end_session,
    find_session,
    forget_sessions,
    note_used,
    save_session,
)
from service.store.people.users import (
    User,
    find_user,
    find_user_by_id,
    note_seen,
    save_hash,
)

IDLE = timedelta(hours=12)
LONGEST = timedelta(days=14)
NOTED_EVERY = timedelta(minutes=5)
"""A use is written down this often at most: writing at every request would keep others waiting."""
_LONGEST_DEVICE = 200


@dataclass(frozen=True, slots=True)
class SignedIn:
    """A session that has just begun, with the secret that is told once."""

    user: User
    secret: str = field(repr=False)
    ends_at: datetime


@dataclass(frozen=True, slots=True)
class SignIn:
    """Somebody who wants in, and what the device calls itself."""

    name: str
    password: str = field(repr=False)
    device: str = ""


def sign_in(engine: Engine, asked: SignIn, *, now: datetime) -> SignedIn:
    """Begin a session; the store is not kept busy while the password is looked at.

    Raises:
        SignInError: When name and password do not belong together, or the user is disabled.
        UnstorableTextError: When the device calls itself what nobody can write down.
    """
    device = check_text(asked.device[:_LONGEST_DEVICE])
    with reading(engine) as connection:
        user = find_user(connection, asked.name)
    fits = fits_password(None if user is None else user.password_hash, asked.password)
    if user is None or not fits:
        raise SignInError
    with writing(engine) as connection:
        current = find_user_by_id(connection, user.user_id)
        if current is None or current.password_hash != user.password_hash:
            raise SignInError
        if is_outdated(current.password_hash):
            save_hash(connection, current, hash_password(asked.password))
        return begin_session(connection, current, device, now=now)


def begin_session(connection: Connection, user: User, device: str, *, now: datetime) -> SignedIn:
    """Begin a session of a user who has proved who it is, under a secret that nobody had before.

    Raises:
        SignInError: When the user is disabled.
    """
    if user.is_disabled:
        raise SignInError
    forget_sessions(connection, ended=now, idle_since=now - IDLE)
    secret, ends_at = make_session_secret(), now + LONGEST
    name = device[:_LONGEST_DEVICE]
    save_session(connection, Session(hash_secret(secret), user.user_id, name, now, now, ends_at))
    note_seen(connection, user.user_id, now)
    return SignedIn(user, secret, ends_at)


def sign_out(connection: Connection, secret: str) -> None:
    """End the session of a secret; one that is over already stays so."""
    end_session(connection, hash_secret(secret))


def find_signed_in(connection: Connection, secret: str, *, now: datetime) -> User | None:
    """Find whose session a secret is of; None where it is over or its user is disabled."""
    session = find_session(connection, hash_secret(secret))
    if session is None or now >= session.ends_at or now >= session.last_used + IDLE:
        return None
    user = find_user_by_id(connection, session.user_id)
    return None if user is None or user.is_disabled else user


def is_use_due(connection: Connection, secret: str, *, now: datetime) -> bool:
    """Tell whether the use of a session is to be written down again."""
    session = find_session(connection, hash_secret(secret))
    return session is not None and now >= session.last_used + NOTED_EVERY


def note_session_used(connection: Connection, secret: str, user: User, *, now: datetime) -> None:
    """Write down that a session is used."""
    note_used(connection, hash_secret(secret), now)
    note_seen(connection, user.user_id, now)
