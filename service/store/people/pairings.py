"""Pairings as they are kept: a code by its SHA-256 until it is used, once, or too old."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy import Connection, delete, insert

from service.store.people.tables import pairings


def save_pairing(connection: Connection, sha256: str, user_id: int, *, ends_at: datetime) -> None:
    """Keep a code that signs in as a user, in place of any the same user had before."""
    forget_pairings(connection, user_id)
    values = {"sha256": sha256, "user_id": user_id, "ends_at": ends_at}
    connection.execute(insert(pairings).values(values))


def take_pairing(connection: Connection, sha256: str, *, now: datetime) -> int | None:
    """Use a code up and give the key of its user; None where there is none that still holds.

    The row goes in the same statement that finds it, so that of two who come at once one gets it.
    """
    connection.execute(delete(pairings).where(pairings.c.ends_at <= now))
    taken = delete(pairings).where(pairings.c.sha256 == sha256).returning(pairings.c.user_id)
    return connection.execute(taken).scalar_one_or_none()


def forget_pairings(connection: Connection, user_id: int) -> None:
    """Forget the codes of a user."""
    connection.execute(delete(pairings).where(pairings.c.user_id == user_id))
