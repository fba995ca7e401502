from __future__ import annotations

from collections.abc import Callable

import pytest

from service.records.rows.row import CELL_LIMIT, Row

MakeRow = Callable[..., Row]


@pytest.mark.parametrize(
    ("written", "text", "code"),
    [
        ("a\x00b", "ab", "control-characters"),
        ("a\ufffdb", "a\ufffdb", "unreadable-characters"),
        ("x" * (CELL_LIMIT + 1), "x" * CELL_LIMIT, "text-too-long"),
    ],
    ids=["control", "lost character", "too long"],
)
def test_cell_is_cleaned_with_a_finding(
    make_row: MakeRow, written: str, text: str, code: str
) -> None:
    """Whatever is changed in a cell is noted."""
    row = make_row(title=written)
    assert row.text("title") == text
    assert [finding.code for finding in row.notebook.findings()] == [code]


def test_absent_column_is_an_empty_cell(make_row: MakeRow) -> None:
    """Readers ask for every column, whether the table has it or not."""
    row = make_row()
    assert row.text("title") == ""
    assert row.cell("photos").items() == ()


def test_line_breaks_part_a_list(make_row: MakeRow) -> None:
    """The same cell is one text or a list, as the reader asks."""
    row = make_row(materials="brass\noak")
    assert row.text("materials") == "brass oak"
    assert row.list_cell("materials").items() == ("brass", "oak")


def test_items_of_a_list_are_cleaned(make_row: MakeRow) -> None:
    """Texts inside a list are cleaned as cells are."""
    row = make_row(hazards=({"code": " lead\x00"}, "arsenic "))
    assert row.list_cell("hazards").items() == ({"code": "lead"}, "arsenic")


def test_number_is_named_by_findings(make_row: MakeRow) -> None:
    """A row that knows its number says it in every finding."""
    row = make_row(title="a\x00").about(object_number="1954.3").about(container_number="B-1")
    row.text("title")
    (finding,) = row.notebook.findings()
    assert finding.where.object_number == "1954.3"
    assert finding.where.container_number == "B-1"
