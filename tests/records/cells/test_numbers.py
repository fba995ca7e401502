from __future__ import annotations

import re

import pytest

from service.records.cells.numbers import NUMBER, parse_number


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("12", 12.0),
        ("12.5", 12.5),
        ("12,5", 12.5),
        (".5", 0.5),
        ("0,125", 0.125),
        ("1250,5", 1250.5),
        ("1,250.5", 1250.5),
        ("3 1/2", 3.5),
        ("3-1/2", 3.5),
        ("7/8", 0.875),
        ("12⅜", 12.375),
        ("12 ⅜", 12.375),
        ("½", 0.5),
    ],
)
def test_number_as_written_has_its_value(text: str, value: float) -> None:
    """Decimal points, decimal commas and fractions give the value a reader would see."""
    assert re.fullmatch(NUMBER, text)
    assert parse_number(text) == value


@pytest.mark.parametrize("text", ["1,250", "12,500", "1/0", "9" * 40])
def test_number_that_cannot_be_told_is_refused(text: str) -> None:
    """A comma before three digits could be off by a thousand, so it is not guessed."""
    assert parse_number(text) is None
