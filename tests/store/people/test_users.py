from __future__ import annotations

import json

import pytest
from sqlalchemy import Connection

from service.errors import NotFoundError, UnstorableTextError, UserTakenError
from service.store.history import begin_change, load_history
from service.store.people.role import Role
from service.store.people.users import (
    find_user,
    find_user_by_id,
    has_users,
    key_of,
    load_user,
    load_users,
    note_seen,
    save_disabled,
    save_hash,
    save_password,
    save_role,
)
from tests.store.made import LATER, changes
from tests.store.people.made import make_user


def test_a_user_is_found_however_the_name_is_typed(connection: Connection) -> None:
    """Case and width make no other person, and nobody can be taken for somebody else."""
    assert not has_users(connection)
    ada = make_user(connection)
    assert has_users(connection)
    assert load_user(connection, "ADA quill") == find_user_by_id(connection, ada.user_id) == ada
    assert key_of("\uff21da  Quill ") == key_of("ada QUILL")
    with pytest.raises(UserTakenError, match="ada quill"):
        make_user(connection, "ada quill")
    assert find_user(connection, "Ben Marl") is None
    with pytest.raises(NotFoundError, match="no user 'Ben Marl'"):
        load_user(connection, "Ben Marl")


def test_what_no_database_can_keep_is_told(connection: Connection) -> None:
    """A NUL or half a character is no name, on whichever database."""
    for name in ("a\0b", "\ud800"):
        with pytest.raises(UnstorableTextError):
            find_user(connection, name)


def test_what_changes_rights_stands_in_the_history(connection: Connection) -> None:
    """Who did what to whom, oldest first, and never a password."""
    make_user(connection, "Ben Marl")
    ada = make_user(connection)
    change = begin_change(connection, LATER)
    save_role(connection, change, ada, Role.PACK)
    save_disabled(connection, begin_change(connection, LATER), ada, disabled=True)
    save_disabled(connection, begin_change(connection, LATER), ada, disabled=False)
    save_password(connection, begin_change(connection, LATER), ada, "another hash")
    told = [event for event in load_history(connection) if "user" in event.entry.detail][-4:]
    assert [event.entry.verb for event in told] == [
        "role changed",
        "user disabled",
        "user enabled",
        "password changed",
    ]
    assert {event.stamp.actor for event in told} == {"Ben Marl"}
    said = {"before": "manage", "role": "pack", "user": "Ada Quill"}
    assert json.loads(told[0].entry.detail) == said
    assert "hash" not in "".join(event.entry.detail for event in told)


def test_what_changes_no_rights_does_not(connection: Connection) -> None:
    """A visit, and a hash at another cost, are kept without a change."""
    ada = make_user(connection)
    before = changes(connection)
    note_seen(connection, ada.user_id, LATER.at)
    save_hash(connection, ada, "new hash")
    (now,) = load_users(connection)
    assert (now.last_seen, now.password_hash) == (LATER.at, "new hash")
    assert changes(connection) == before
    assert "new hash" not in repr(now)
