from __future__ import annotations

from service.handling.checks.kinds import (
    CHECKS,
    LOOKED_AT,
    RESULT_WORDS,
    CheckKind,
    CheckResult,
)
from service.handling.checks.rules import RULES


def test_every_kind_is_in_words() -> None:
    """Each has its heading, what to look for, and a rule that is listed."""
    assert list(CHECKS) == list(CheckKind)
    assert all(entry.looks_for and entry.rule in RULES for entry in CHECKS.values())
    assert set(RESULT_WORDS) == set(CheckResult)


def test_a_look_lifts_nothing() -> None:
    """All kinds but weighing are done by looking, and asked for yearly."""
    assert set(CheckKind) - set(LOOKED_AT) == {CheckKind.WEIGHT}
    assert {CHECKS[kind].months for kind in LOOKED_AT} == {12}
    assert CHECKS[CheckKind.WEIGHT].months == 0
