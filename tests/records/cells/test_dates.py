from __future__ import annotations

from collections.abc import Callable
from datetime import date

import pytest

from service.records.cells.dates import is_unclear_date, parse_date, read_date
from service.records.rows.cell import Cell

DAY = date(2026, 10, 14)


@pytest.mark.parametrize(
    "text",
    [
        "2026-10-14",
        "2026/10/14",
        "2026-10-14 09:30:00",
        "2026-10-14T09:30:00Z",
        "14 Oct 2026",
        "14 October 2026",
        "14th Oct. 2026",
        "14-Oct-2026",
        "Oct 14, 2026",
        "14/10/2026",
        "14.10.2026",
        "10/14/2026",
    ],
)
def test_date_as_written_is_understood(text: str) -> None:
    """Every usual way to write one day gives that day."""
    assert parse_date(text) == DAY


def test_same_day_and_month_is_clear() -> None:
    """Where day and month are the same number it does not matter which comes first."""
    assert parse_date("10/10/2026") == date(2026, 10, 10)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("04/05/2026", "two different days"),
        ("31/02/2024", "two different days or none"),
        ("2026", "no day"),
        ("Oct 2026", "no day"),
        ("14/10/26", "a year of two digits"),
        ("soon", "a word"),
    ],
    ids=lambda value: value.replace("/", "-"),
)
def test_date_that_names_no_day_is_noted(
    make_cell: Callable[[str], Cell], text: str, reason: str
) -> None:
    """A date that names two days or none is left out and says so."""
    cell = make_cell(text)
    assert read_date(cell) is None, reason
    assert [finding.code for finding in cell.notebook.findings()] == ["unreadable-date"]


def test_only_exchangeable_numbers_are_unclear() -> None:
    """Advice about exchanged day and month is given only where it helps."""
    assert is_unclear_date("04/05/2026")
    assert not is_unclear_date("2026-13-01")
    assert not is_unclear_date("31/02/2024")
