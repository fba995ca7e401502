from __future__ import annotations

from service.web.access.limit import Limit


def test_an_address_may_ask_so_often_in_a_minute() -> None:
    """The next minute it may ask again; others are not kept waiting by it."""
    now = [0.0]
    limit = Limit(2, clock_seconds=lambda: now[0])
    assert [limit.allows("a") for _ in range(3)] == [True, True, False]
    assert limit.allows("b")
    now[0] = 61.0
    assert limit.allows("a")
