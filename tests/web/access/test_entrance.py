from __future__ import annotations

import pytest
from fastapi import Response

from service.keeping.people.signing_in import SignedIn
from service.store.people.role import Role
from service.store.people.users import User
from service.web.access.entrance import Entrance
from service.web.access.porter import Porter
from service.web.access.reader import Way
from service.web.access.tries import Tries
from service.web.replies.refusals import RefusedError
from tests.web.access.made import make_request
from tests.web.store.opened import MOMENT


def test_it_counts_gives_and_takes() -> None:
    """A try too many is refused; the cookie comes with the session and goes with it."""
    response = Response()
    porter = Porter(None, is_local=True, tries=Tries(for_a_name=1))
    entrance = Entrance(make_request(), response, porter)
    entrance.count("Ada Quill")
    with pytest.raises(RefusedError, match="too many"):
        entrance.count("Ada Quill")
    user = User(1, "Ada Quill", Role.VIEW, "", is_disabled=False, added_at=MOMENT, last_seen=None)
    entrance.let_in(SignedIn(user, "secret", MOMENT))
    assert entrance.show_out().way is Way.NOBODY
    given, taken = response.headers.getlist("set-cookie")
    assert given.startswith("underlid=secret;")
    assert "Max-Age=0" in taken


def test_no_password_is_taken_in_clear() -> None:
    """Not even counted: the password may have been read already."""
    entrance = Entrance(make_request(host="store.local"), Response(), Porter(None, is_local=True))
    with pytest.raises(RefusedError, match="plain http"):
        entrance.count("Ada Quill")
