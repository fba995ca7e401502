from __future__ import annotations

from datetime import timedelta

from sqlalchemy import Connection

from service.store.people.pairings import forget_pairings, save_pairing, take_pairing
from tests.store.made import MOMENT
from tests.store.people.made import make_user

SOON = MOMENT + timedelta(minutes=5)


def test_a_code_is_used_once(connection: Connection) -> None:
    """Whoever comes second gets nothing."""
    user_id = make_user(connection).user_id
    save_pairing(connection, "a", user_id, ends_at=SOON)
    assert take_pairing(connection, "a", now=MOMENT) == user_id
    assert take_pairing(connection, "a", now=MOMENT) is None


def test_a_code_ends(connection: Connection) -> None:
    """At its moment, when its user asks for another, and when it is forgotten."""
    user_id = make_user(connection).user_id
    save_pairing(connection, "a", user_id, ends_at=SOON)
    assert take_pairing(connection, "a", now=SOON) is None
    save_pairing(connection, "a", user_id, ends_at=SOON)
    save_pairing(connection, "b", user_id, ends_at=SOON)
    assert take_pairing(connection, "a", now=MOMENT) is None
    forget_pairings(connection, user_id)
    assert take_pairing(connection, "b", now=MOMENT) is None
