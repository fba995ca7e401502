from __future__ import annotations

import math

import pytest

from service.sheets.measures import read_count, read_length_mm


@pytest.mark.parametrize(
    ("value", "unit", "length_mm"),
    [
        ("63.5 mm", "", 63.5),
        ("63,5mm", "", 63.5),
        (" 2.625 in ", "mm", 66.675),
        ("2 5/8 IN", "", 66.675),
        ("1/2 in", "", 12.7),
        ("5/8", "in", 15.875),
        (63.5, "mm", 63.5),
        (1, "in", 25.4),
        (-2, "mm", -2.0),
    ],
)
def test_reads_lengths(value: object, unit: str, length_mm: float) -> None:
    """A length is a number or a fraction; its own unit wins over the one given."""
    assert read_length_mm(value, unit=unit) == pytest.approx(length_mm)


def test_lets_nonsense_numbers_through() -> None:
    """What is no number at all is left for the stock to refuse, which knows the measure."""
    assert math.isnan(read_length_mm(math.nan, unit="mm"))


@pytest.mark.parametrize(
    ("value", "reason"),
    [
        ("", "cannot be read"),
        ("wide", "cannot be read"),
        ("-1 mm", "cannot be read"),
        ("1/0 in", "cannot be read"),
        ("6 cm", "cannot be read"),
        pytest.param("9" * 5000 + " mm", "cannot be read", id="long text"),
        (None, "cannot be read"),
        (True, "cannot be read"),
        ([1], "cannot be read"),
        pytest.param("63.5", "has no unit", id="text without a unit"),
        (63.5, "has no unit"),
        pytest.param(10**400, "is too large", id="long number"),
        (math.inf, "is too large"),
    ],
)
def test_refuses_what_is_no_length(value: object, reason: str) -> None:
    """What cannot be read as a length is refused with the reason."""
    with pytest.raises(ValueError, match=reason):
        read_length_mm(value, unit="")


@pytest.mark.parametrize(("value", "number"), [(3, 3), ("7", 7), (" 10 ", 10), (-1, -1)])
def test_reads_counts(value: object, number: int) -> None:
    """A count is a whole number, typed as a number or as text."""
    assert read_count(value) == number


@pytest.mark.parametrize("value", ["", "3.5", "-1", 3.0, None, True])
def test_refuses_what_is_no_count(value: object) -> None:
    """Half columns and words are no counts."""
    with pytest.raises(ValueError, match="no whole number"):
        read_count(value)
