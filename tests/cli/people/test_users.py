from __future__ import annotations

from tests.cli.people.conftest import PASSWORD, Ask, Say

ADA, BEN = "Ada Quill", "Ben Marl"


def test_users_come_and_change(ask: Ask, say: Say) -> None:
    """Added, given another role, locked out and let in again; the list shows it."""
    assert ask("users", "add", ADA, "manage")["role"] == "manage"
    ask("users", "add", BEN, "view")
    assert ask("users", "role", BEN, "print")["role"] == "print"
    assert ask("users", "disable", BEN)["disabled"]
    said = say("users", "list")[1]
    assert "2 users" in said
    assert "Ben Marl: print, never here, locked out" in said
    assert not ask("users", "enable", BEN)["disabled"]
    listed = ask("users", "list")["users"]
    assert [user["name"] for user in listed] == [ADA, BEN]
    assert "password" not in str(listed)


def test_a_password_comes_from_standard_input(ask: Ask, say: Say) -> None:
    """Too short a one is told, and that the sessions end."""
    ask("users", "add", ADA, "manage")
    assert say("users", "password", ADA, typed="short\n")[0] == 2
    assert "sign in anew" in say("users", "password", ADA, typed=f"{PASSWORD} again\n")[1]
    assert say("users", "password", ADA)[0] == 2


def test_what_cannot_be_is_told(ask: Ask, say: Say) -> None:
    """A first user who manages nothing, the last manager, a role or a user there is not."""
    assert say("users", "add", BEN, "view", typed=f"{PASSWORD}\n")[0] == 2
    ask("users", "add", ADA, "manage")
    code, said = say("users", "role", ADA, "view")
    assert (code, "has to be a manager" in " ".join(said.split())) == (2, True)
    assert say("users", "role", ADA, "owner")[0] == 2
    assert say("users", "disable", BEN)[0] == 3
