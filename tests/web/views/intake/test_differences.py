"""Tests for what the check shows."""

from __future__ import annotations

import pytest

from service.web.views.intake.differences import tell_value


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (None, ""),
        ("", ""),
        (True, "yes"),
        (["lead", "hemp"], "lead; hemp"),
        ({"value_g": 12.5, "is_about": False}, "value g 12.5, is about no"),
        ("x" * 200, "x" * 120),
    ],
)
def test_a_value_is_told_in_one_line(value: object, words: str) -> None:
    """Whatever a record may hold."""
    assert tell_value(value) == words
