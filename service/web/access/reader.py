"""Whoever sends a request, as the routes know them."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum

from service.store.people.role import Role, roles_within


class Way(StrEnum):
    """How somebody was recognised."""

    NOBODY = "nobody"
    THIS_MACHINE = "this machine"
    SESSION = "session"
    TOKEN = "token"  # noqa: S105 - a word, no secret


@dataclass(frozen=True, slots=True)
class Reader:
    """Somebody who asks: the name that acts, the role, and how they are known.

    `name` is empty where nobody has signed in; `scopes` are the roles whose work is allowed, which
    for a token may be fewer than its user's role includes. Forms are bound to `form_key`, and the
    session is ended by `secret`.
    """

    name: str
    role: Role | None
    way: Way
    scopes: frozenset[Role]
    form_key: bytes = field(repr=False)
    secret: str = field(default="", repr=False)

    def may(self, role: Role) -> bool:
        """Tell whether work of a role is allowed."""
        return role in self.scopes

    @property
    def is_signed_in(self) -> bool:
        """Tell whether a user is known, whose name stands in the history."""
        return self.way in {Way.SESSION, Way.TOKEN}


def make_nobody(form_key: bytes) -> Reader:
    """Give a reader who may do nothing but what is open to all."""
    return Reader("", None, Way.NOBODY, frozenset(), form_key)


def make_local(form_key: bytes) -> Reader:
    """Give a reader on this machine, while there are no users: everything is allowed."""
    return Reader("", Role.MANAGE, Way.THIS_MACHINE, roles_within(Role.MANAGE), form_key)
