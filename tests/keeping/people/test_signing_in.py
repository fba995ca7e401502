from __future__ import annotations

from datetime import datetime, timedelta

import pytest

from service.errors import SignInError
from service.keeping.people import signing_in
from service.keeping.people.passwords import NOBODY, is_outdated
from service.keeping.people.signing_in import (
    IDLE,
    LONGEST,
    SignedIn,
    SignIn,
    begin_session,
    find_signed_in,
    is_use_due,
    note_session_used,
    sign_in,
    sign_out,
)
from service.keeping.people.users import change_role, disable_user
from service.store.handles import Connection, Engine
from service.store.open import reading, writing
from service.store.people.role import Role
from service.store.people.sessions import load_sessions
from service.store.people.users import User, load_user, save_hash
from tests.keeping.people.made import (
    ADA,
    BEN,
    OTHER_PASSWORD,
    PASSWORD,
    add_manager,
    add_somebody,
)
from tests.store.made import MOMENT, STAMP

MINUTE = timedelta(minutes=1)


@pytest.fixture
def engine(engine: Engine) -> Engine:
    """Give a store with a manager and somebody."""
    with writing(engine) as connection:
        add_manager(connection)
        add_somebody(connection)
    return engine


def _enter(engine: Engine, name: str = BEN, password: str = PASSWORD) -> SignedIn:
    return sign_in(engine, SignIn(name, password, "Store telephone"), now=MOMENT)


def _who(engine: Engine, secret: str, now: datetime = MOMENT) -> User | None:
    with reading(engine) as connection:
        return find_signed_in(connection, secret, now=now)


def test_name_and_password_begin_a_session(engine: Engine) -> None:
    """Its secret finds the user, is new each time, and is not what is kept."""
    first, second = _enter(engine, "ben  MARL"), _enter(engine)
    assert first.secret != second.secret
    found = _who(engine, first.secret)
    assert found is not None
    assert (found.name, found.last_seen) == (BEN, MOMENT)
    with reading(engine) as connection:
        kept = load_sessions(connection, found.user_id)
    assert {session.device for session in kept} == {"Store telephone"}
    assert first.secret not in str(kept)
    assert first.secret not in repr(first)


@pytest.mark.parametrize(
    ("name", "password"), [(BEN, OTHER_PASSWORD), ("Nobody", PASSWORD), (BEN, "x" * 300), ("", "")]
)
def test_all_else_is_refused_in_the_same_words(engine: Engine, name: str, password: str) -> None:
    """Whether the name or the password was wrong, nobody learns."""
    with pytest.raises(SignInError) as refused:
        _enter(engine, name, password)
    assert str(refused.value) == str(SignInError())


def test_an_unknown_name_is_looked_at_as_long(
    engine: Engine, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A hash of the same cost is computed for it, once, as for a name that is known."""
    looked: list[str | None] = []

    def look(kept: str | None, _password: str) -> bool:
        looked.append(kept)
        return False

    monkeypatch.setattr(signing_in, "fits_password", look)
    for name in ("Nobody", BEN):
        with pytest.raises(SignInError):
            _enter(engine, name)
    assert looked[0] is None
    assert str(looked[1]).split("$")[:4] == NOBODY.split("$")[:4]


@pytest.mark.parametrize(
    ("used", "asked", "holds"),
    [
        (timedelta(0), IDLE - MINUTE, True),
        (timedelta(0), IDLE, False),
        (IDLE - MINUTE, 2 * IDLE - 2 * MINUTE, True),
        (LONGEST - MINUTE, LONGEST - MINUTE, True),
        (LONGEST - MINUTE, LONGEST, False),
    ],
    ids=["used today", "left alone", "used meanwhile", "last minute", "over"],
)
def test_a_session_ends(engine: Engine, used: timedelta, asked: timedelta, *, holds: bool) -> None:
    """Half a day after its last use, and after a fortnight in all."""
    signed = _enter(engine)
    with writing(engine) as connection:
        note_session_used(connection, signed.secret, signed.user, now=MOMENT + used)
    assert (_who(engine, signed.secret, MOMENT + asked) is not None) is holds


def test_signing_out_ends_it(engine: Engine) -> None:
    """The secret is worth nothing then; another session of the same user goes on."""
    first, second = _enter(engine), _enter(engine)
    for _ in range(2):
        with writing(engine) as connection:
            sign_out(connection, first.secret)
    assert _who(engine, first.secret) is None
    assert _who(engine, second.secret) is not None


def test_what_a_user_may_do_is_asked_each_time(engine: Engine) -> None:
    """A lower role and a lock hold in the middle of a session, and at the door."""
    signed = _enter(engine, ADA)
    with writing(engine) as connection:
        add_manager(connection, "Eve Dunn")
        change_role(connection, ADA, Role.VIEW, stamp=STAMP)
    found = _who(engine, signed.secret)
    assert found is not None
    assert found.role is Role.VIEW
    with writing(engine) as connection:
        disable_user(connection, ADA, stamp=STAMP)
    assert _who(engine, signed.secret) is None
    with pytest.raises(SignInError):
        _enter(engine, ADA)


def test_a_use_is_written_down_now_and_then(engine: Engine) -> None:
    """Not at every request, so that readers keep no writer waiting."""
    signed = _enter(engine)
    with reading(engine) as connection:
        dues = [
            is_use_due(connection, secret, now=MOMENT + minutes * MINUTE)
            for secret, minutes in ((signed.secret, 4), (signed.secret, 5), ("none", 5))
        ]
    assert dues == [False, True, False]


def test_an_outdated_hash_is_made_anew(engine: Engine) -> None:
    """Whoever signs in has their password kept at today's cost."""
    from argon2 import PasswordHasher  # noqa: PLC0415 - only this test makes a cheap hash

    cheap = PasswordHasher(time_cost=1, memory_cost=8, parallelism=1).hash(PASSWORD)
    with writing(engine) as connection:
        save_hash(connection, load_user(connection, BEN), cheap)
    _enter(engine)
    with reading(engine) as connection:
        assert not is_outdated(load_user(connection, BEN).password_hash)
    _enter(engine)


def test_a_password_changed_meanwhile_lets_nobody_in(
    engine: Engine, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What was right when it was looked at must still be when the session begins."""

    def look(_kept: str | None, _password: str) -> bool:
        with writing(engine) as connection:
            save_hash(connection, load_user(connection, BEN), "changed")
        return True

    monkeypatch.setattr(signing_in, "fits_password", look)
    with pytest.raises(SignInError):
        _enter(engine)


def test_sessions_that_are_over_go(connection: Connection) -> None:
    """A new one takes those away that have ended, so that they do not gather."""
    ada = load_user(connection, ADA)
    for now in (MOMENT, MOMENT + IDLE):
        begin_session(connection, ada, "", now=now)
    assert len(load_sessions(connection, ada.user_id)) == 1
