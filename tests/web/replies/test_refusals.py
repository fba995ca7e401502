from __future__ import annotations

from service.web.replies.refusals import REFUSALS, Refusal, RefusedError


def test_every_refusal_has_its_row() -> None:
    """Nothing is refused without a status and advice."""
    assert set(REFUSALS) == set(Refusal)


def test_a_refusal_may_carry_both_states() -> None:
    """Where two disagree, each can be compared with the other."""
    error = RefusedError(Refusal.STALE, "Changed meanwhile.", yours={"a": 1}, current={"a": 2})
    assert (error.yours, error.current) == ({"a": 1}, {"a": 2})
