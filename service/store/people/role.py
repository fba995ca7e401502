"""What a user may do, in strict order: each role may do all that the ones before it may."""

from __future__ import annotations

from enum import StrEnum


class Role(StrEnum):
    """A role of a user; a token names several as its scopes."""

    VIEW = "view"
    PACK = "pack"
    PRINT = "print"
    MANAGE = "manage"


def roles_within(role: Role) -> frozenset[Role]:
    """Give a role and all that it includes."""
    order = list(Role)
    return frozenset(order[: order.index(role) + 1])
