from __future__ import annotations

from service.store.people.role import Role, roles_within
from service.web.access.reader import Reader, Way, make_local, make_nobody


def test_nobody_may_do_nothing() -> None:
    """Neither name nor role nor any work."""
    nobody = make_nobody(b"key")
    assert not any(nobody.may(role) for role in Role)
    assert not nobody.is_signed_in


def test_this_machine_may_do_everything_and_has_no_name() -> None:
    """So that whoever acts there still has to be named."""
    local = make_local(b"key")
    assert all(local.may(role) for role in Role)
    assert (local.name, local.is_signed_in) == ("", False)


def test_secrets_are_in_no_log() -> None:
    """A reader that is written down shows neither the secret nor the key of forms."""
    scopes = roles_within(Role.PACK)
    reader = Reader("Ada Quill", Role.PACK, Way.SESSION, scopes, b"key of forms", "the secret")
    assert reader.is_signed_in
    assert "secret" not in repr(reader)
    assert "key of" not in repr(reader)
