from __future__ import annotations

import pytest
from sqlalchemy import Connection

from service.errors import NotFoundError
from service.store.people.role import Role
from service.store.people.tokens import (
    NewToken,
    find_token,
    load_token,
    load_tokens,
    note_token_used,
    save_revoked,
    save_token,
)
from tests.store.made import LATER, MOMENT
from tests.store.people.made import make_user


def test_a_token_is_kept_with_its_scopes(connection: Connection) -> None:
    """By the digest of its secret, for its user, until it is taken back."""
    ada, ben = (make_user(connection, name) for name in ("Ada Quill", "Ben Marl"))
    new = NewToken("d1", ada.user_id, "nightly export", frozenset({Role.VIEW, Role.PRINT}))
    made = save_token(connection, new, at=MOMENT)
    assert find_token(connection, "d1") == made
    assert (made.user_name, made.scopes) == ("Ada Quill", new.scopes)
    assert load_tokens(connection, ada.user_id) == load_tokens(connection) == (made,)
    assert load_tokens(connection, ben.user_id) == ()
    note_token_used(connection, made.token_id, LATER.at)
    save_revoked(connection, made.token_id, LATER.at)
    kept = load_token(connection, made.token_id)
    assert (kept.last_used, kept.revoked_at) == (LATER.at, LATER.at)


def test_what_is_no_token_is_told(connection: Connection) -> None:
    """A digest nobody has finds none, a number nobody has is an error."""
    assert find_token(connection, "d2") is None
    with pytest.raises(NotFoundError, match="no token '7'"):
        load_token(connection, 7)
