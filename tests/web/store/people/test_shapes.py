from __future__ import annotations

import pytest
from pydantic import ValidationError

from service.store.people.role import Role
from service.web.access.reader import make_local, make_nobody
from service.web.store.people.shapes import TokenBody, UserChangeBody, show_reader


def test_scopes_are_shown_in_order() -> None:
    """From view to manage, however they were kept."""
    assert show_reader(make_local(b"")).scopes == list(Role)
    assert show_reader(make_nobody(b"")).model_dump(mode="json") == {
        "name": "",
        "role": None,
        "way": "nobody",
        "scopes": [],
    }


def test_no_other_role_or_field_is_taken() -> None:
    """A slip in a name changes nothing silently."""
    for body in ({"role": "owner"}, {"admin": True}):
        with pytest.raises(ValidationError):
            UserChangeBody.model_validate(body)
    with pytest.raises(ValidationError):
        TokenBody.model_validate({"name": "nightly", "scopes": []})
