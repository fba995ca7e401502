from __future__ import annotations

from service.handling.checks.kinds import CheckKind
from service.keeping.rounds.due import ALL_KINDS
from service.web.views.checks.wish import RoundWish, read_wish


def test_what_cannot_be_read_is_not_chosen() -> None:
    """Days that are none, days without end, and a kind nobody knows."""
    assert read_wish("soon", "ghosts", "") == RoundWish()
    assert read_wish("99999", "pests", "Store 2") == RoundWish(3650, "pests", "Store 2")
    assert read_wish().kinds == ALL_KINDS
    assert read_wish(kind="pests").kinds == {CheckKind.PESTS}


def test_a_path_carries_the_wish_on() -> None:
    """What is chosen goes with it and nothing else; a number keeps its signs."""
    assert RoundWish().path("/checks") == "/checks"
    path = RoundWish(30, "", "Store 2 / Bay 4").path("/checks/look", container="B/1&2")
    assert path == "/checks/look?container=B%2F1%262&within=30&place=Store+2+%2F+Bay+4"
