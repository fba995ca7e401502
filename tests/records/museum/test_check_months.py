from __future__ import annotations

from collections.abc import Callable

import pytest

from service.records.museum.check_months import CheckMonths, read_check_months
from service.records.read_tables import read_tables
from service.records.rows.row import Row

MakeRow = Callable[..., Row]

TOML = b"""
name = "Port Merrow Museum"
[checks]
textiles = 6
weight = 24
pests = 0
"""


def test_months_are_read(make_row: MakeRow) -> None:
    """What is given counts, nought included; what is not stays as usual."""
    row = make_row(checks_pests="6", checks_weight="0", checks_natural_history="4")
    assert read_check_months(row) == CheckMonths(pests=6, weight=0, natural_history=4)
    assert read_check_months(make_row()) == CheckMonths()


@pytest.mark.parametrize("text", ["yearly", "-3", "2.5", "121", "9" * 30])
def test_what_is_no_number_of_months_is_noted(make_row: MakeRow, text: str) -> None:
    """It stays usual and is said."""
    row = make_row(checks_found=text)
    assert read_check_months(row) == CheckMonths()
    assert [finding.code for finding in row.notebook.findings()] == ["unreadable-count"]


def test_ten_years_is_the_longest(make_row: MakeRow) -> None:
    """The longest that is understood beside the first that is not."""
    assert read_check_months(make_row(checks_found="120")) == CheckMonths(found=120)


def test_the_group_of_the_file_is_understood() -> None:
    """Keys stand under [checks]."""
    read = read_tables({"objects.csv": b"object_number\nX.1\n", "museum.toml": TOML})
    assert read.museum.checks == CheckMonths(pests=0, textiles=6, weight=24)
    assert read.findings == ()
