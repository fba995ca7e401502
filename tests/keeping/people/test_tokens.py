from __future__ import annotations

import json
from datetime import timedelta

import pytest

from service.errors import NotFoundError, ScopeError, UserNameError
from service.keeping.people.tokens import (
    find_token_user,
    is_token_use_due,
    make_token,
    note_token_use,
    revoke_token,
)
from service.keeping.people.users import disable_user, enable_user
from service.store.handles import Connection
from service.store.history import load_history
from service.store.people.role import Role
from service.store.people.tokens import load_token
from service.store.people.users import load_user
from tests.keeping.people.made import ADA, BEN, add_manager, add_somebody
from tests.store.made import MOMENT, STAMP, changes


@pytest.fixture
def connection(connection: Connection) -> Connection:
    """Give a store with a manager and somebody who prints."""
    add_manager(connection)
    add_somebody(connection, BEN, Role.PRINT)
    return connection


def test_a_token_finds_its_user(connection: Connection) -> None:
    """By its secret, which is kept nowhere; the history says what it is for."""
    made = make_token(connection, BEN, " label  station", {Role.PRINT, Role.VIEW}, stamp=STAMP)
    found = find_token_user(connection, made.secret)
    assert found == (made.token, load_user(connection, BEN))
    assert made.token.name == "label station"
    assert find_token_user(connection, made.secret + "x") is None
    event = load_history(connection)[-1]
    said = {"called": "label station", "scopes": ["view", "print"], "token": 1, "user": BEN}
    assert (event.entry.verb, json.loads(event.entry.detail)) == ("token made", said)
    assert made.secret not in repr(made)


@pytest.mark.parametrize(
    "scopes",
    [{Role.MANAGE}, {Role.VIEW, Role.MANAGE}, set()],
    ids=["more", "less and more", "none"],
)
def test_a_scope_is_never_above_the_role(connection: Connection, scopes: set[Role]) -> None:
    """Whoever prints can make no token that manages, and none for nothing."""
    with pytest.raises(ScopeError, match="allowed: view, pack, print"):
        make_token(connection, BEN, "nightly", scopes, stamp=STAMP)


def test_a_token_needs_a_name_and_a_user(connection: Connection) -> None:
    """Without a name nobody knows later what it was for."""
    with pytest.raises(UserNameError):
        make_token(connection, BEN, "", {Role.VIEW}, stamp=STAMP)
    with pytest.raises(NotFoundError):
        make_token(connection, "Nobody", "nightly", {Role.VIEW}, stamp=STAMP)


def test_a_token_is_taken_back_for_ever(connection: Connection) -> None:
    """Once, however often it is said."""
    made = make_token(connection, BEN, "nightly", {Role.VIEW}, stamp=STAMP)
    assert revoke_token(connection, 1, stamp=STAMP).revoked_at == MOMENT
    before = changes(connection)
    revoke_token(connection, 1, stamp=STAMP)
    assert changes(connection) == before
    assert find_token_user(connection, made.secret) is None
    with pytest.raises(NotFoundError):
        revoke_token(connection, 2, stamp=STAMP)


def test_a_locked_user_has_no_tokens(connection: Connection) -> None:
    """They do nothing until the user is let in again."""
    made = make_token(connection, BEN, "nightly", {Role.VIEW}, stamp=STAMP)
    disable_user(connection, BEN, stamp=STAMP)
    assert find_token_user(connection, made.secret) is None
    enable_user(connection, BEN, stamp=STAMP)
    assert find_token_user(connection, made.secret) is not None


def test_its_use_is_written_down_now_and_then(connection: Connection) -> None:
    """At first, and after some minutes again."""
    token = make_token(connection, ADA, "nightly", {Role.VIEW}, stamp=STAMP).token
    assert is_token_use_due(token, now=MOMENT)
    note_token_use(connection, token, now=MOMENT)
    used = load_token(connection, token.token_id)
    later = [MOMENT + timedelta(minutes=minutes) for minutes in (4, 5)]
    assert [is_token_use_due(used, now=now) for now in later] == [False, True]
    assert load_user(connection, ADA).last_seen == MOMENT
