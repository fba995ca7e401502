from __future__ import annotations

import pytest
from sqlalchemy import Connection
from sqlalchemy.exc import IntegrityError

from service.store.kept.replies import KeptReply, find_reply, forget_replies, keep_reply
from tests.store.made import LATER, MOMENT

REPLY = KeptReply("a" * 64, 201, '{"run": 7}')


def test_an_answer_is_found_by_its_key(connection: Connection) -> None:
    """What was answered once is there to be answered again, until it is forgotten."""
    assert find_reply(connection, "k-1") is None
    keep_reply(connection, "k-1", REPLY, at=MOMENT)
    assert find_reply(connection, "k-1") == REPLY
    assert forget_replies(connection, before=MOMENT) == 0
    assert forget_replies(connection, before=LATER.at) == 1
    assert find_reply(connection, "k-1") is None


def test_a_key_is_used_once(connection: Connection) -> None:
    """The database refuses a second answer under one key."""
    keep_reply(connection, "k-1", REPLY, at=MOMENT)
    with pytest.raises(IntegrityError):
        keep_reply(connection, "k-1", REPLY, at=MOMENT)
