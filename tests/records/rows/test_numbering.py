from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from service.records.rows.numbering import read_number, unique_rows
from service.records.rows.row import Row

MakeRow = Callable[..., Row]


@pytest.mark.parametrize("number", ["1.93E+05", "14-Mar", "Mar-54", "03/04/1972", "12-Oct-1987"])
def test_changed_number_is_noted(make_row: MakeRow, number: str) -> None:
    """A number that looks as spreadsheets change them is kept and pointed at."""
    row = make_row(object_number=number)
    assert read_number(row, "object_number") == number
    codes = [finding.code for finding in row.notebook.findings()]
    assert codes == ["number-like-object-number"]


@pytest.mark.parametrize(
    "number", ["1987.412.10a-c", "1931/14", "00123", "E2561.1", "1987.4.12", "PM 22", "1931.1"]
)
def test_usual_number_is_an_opaque_text(make_row: MakeRow, number: str) -> None:
    """Zeros, letters and signs of a number are neither changed nor questioned."""
    row = make_row(object_number=number)
    assert read_number(row, "object_number") == number
    assert row.notebook.findings() == ()


def test_number_that_was_no_text_is_noted(make_row: MakeRow) -> None:
    """A number cell may have lost a zero that nobody can see any more."""
    row = replace(make_row(object_number="1931.1"), retyped=frozenset({"object_number"}))
    read_number(row, "object_number")
    assert len(row.notebook.findings()) == 1


def test_first_of_two_rows_wins(make_row: MakeRow) -> None:
    """Rows without a number or with one that was there before are noted and left out."""
    first = make_row(object_number="1", title="first")
    others = [
        replace(row, notebook=first.notebook)
        for row in (make_row(object_number="1"), make_row(), make_row(object_number="2"))
    ]
    kept = list(unique_rows([first, *others], "object_number"))
    assert [(number, row.text("title")) for number, row in kept] == [("1", "first"), ("2", "")]
    codes = [finding.code for finding in first.notebook.findings()]
    assert codes == ["duplicate-number", "row-without-number"]
