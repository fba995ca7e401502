from __future__ import annotations

from datetime import timedelta

from sqlalchemy import Connection

from service.store.people.sessions import (
    Session,
    end_session,
    end_sessions,
    find_session,
    forget_sessions,
    load_sessions,
    note_used,
    save_session,
)
from tests.store.made import LATER, MOMENT
from tests.store.people.made import make_user

DAY = timedelta(days=1)


def _save(connection: Connection, user_id: int, sha256: str, last_used: int = 0) -> Session:
    used = MOMENT + last_used * DAY
    session = Session(sha256, user_id, "Store telephone", MOMENT, used, MOMENT + 14 * DAY)
    save_session(connection, session)
    return session


def test_a_session_is_kept_until_it_is_ended(connection: Connection) -> None:
    """Found by its digest alone, noted when used, and gone for good."""
    user_id = make_user(connection).user_id
    first = _save(connection, user_id, "a")
    assert find_session(connection, "a") == first
    note_used(connection, "a", LATER.at)
    assert load_sessions(connection, user_id)[0].last_used == LATER.at
    end_session(connection, "a")
    end_session(connection, "a")
    assert find_session(connection, "a") is None


def test_all_of_one_user_end_at_once(connection: Connection) -> None:
    """Those of others stay."""
    ada, ben = (make_user(connection, name).user_id for name in ("Ada Quill", "Ben Marl"))
    for sha256, user_id in (("a", ada), ("b", ada), ("c", ben)):
        _save(connection, user_id, sha256)
    end_sessions(connection, ada)
    assert load_sessions(connection, ada) == ()
    assert len(load_sessions(connection, ben)) == 1


def test_what_is_over_is_forgotten(connection: Connection) -> None:
    """A session that ended, or lay unused, leaves no row behind."""
    user_id = make_user(connection).user_id
    _save(connection, user_id, "idle")
    _save(connection, user_id, "used", last_used=2)
    forget_sessions(connection, ended=MOMENT + 2 * DAY, idle_since=MOMENT + DAY)
    assert [each.sha256 for each in load_sessions(connection, user_id)] == ["used"]
    forget_sessions(connection, ended=MOMENT + 14 * DAY, idle_since=MOMENT)
    assert load_sessions(connection, user_id) == ()
