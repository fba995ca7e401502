from __future__ import annotations

from service.store.people.role import Role, roles_within


def test_each_role_includes_the_ones_before() -> None:
    """The order is view, pack, print, manage, and whoever manages may do everything."""
    assert [len(roles_within(role)) for role in Role] == [1, 2, 3, 4]
    assert roles_within(Role.PRINT) == {Role.VIEW, Role.PACK, Role.PRINT}
