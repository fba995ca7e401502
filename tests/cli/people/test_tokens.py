from __future__ import annotations

from tests.cli.people.conftest import Ask, Say

ADA = "Ada Quill"


def test_tokens_come_and_go(ask: Ask, say: Say) -> None:
    """Shown once, listed without what was shown, and taken back."""
    ask("users", "add", ADA, "manage")
    made = ask("tokens", "make", ADA, "nightly export", "--scope", "view", "--scope", "print")
    assert made["token"]["scopes"] == ["view", "print"]
    assert made["secret"].startswith("underlid_")
    said = say("tokens", "list")[1]
    assert "1: nightly export, of Ada Quill (view, print)" in said
    assert made["secret"] not in said
    assert "Authorization: Bearer" in say("tokens", "make", ADA, "other", "--scope", "view")[1]
    assert ask("tokens", "revoke", 1)["revoked_at"]
    assert "revoked" in say("tokens", "list")[1]
    assert ask("tokens", "list")["tokens"][0]["user"] == ADA


def test_what_cannot_be_is_told(ask: Ask, say: Say) -> None:
    """Without a scope, for nobody, above a role, or a number there is not."""
    ask("users", "add", ADA, "manage")
    ask("users", "add", "Ben Marl", "view")
    assert say("tokens", "make", ADA, "none")[0] == 2
    assert say("tokens", "make", "Ben Marl", "sly", "--scope", "manage")[0] == 2
    assert say("tokens", "make", "Nobody", "sly", "--scope", "view")[0] == 3
    assert say("tokens", "revoke", 7)[0] == 3
