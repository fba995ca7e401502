from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from service.findings import Where
from service.records.rows.cell import Cell
from service.sentence import Sentence

MakeCell = Callable[[str], Cell]


def test_value_is_empty_where_nothing_is_known(make_cell: MakeCell) -> None:
    """The text keeps what was written, the value drops words for nothing."""
    cell = make_cell("unknown")
    assert (cell.text, cell.value) == ("unknown", "")


def test_items_are_parted_by_semicolons(make_cell: MakeCell) -> None:
    """Empty items and blanks around items do not count."""
    assert make_cell("brass; ;oak;").items() == ("brass", "oak")
    assert make_cell("Store / bay 4").texts(separator="/") == ("Store", "bay 4")


def test_items_of_a_document_are_not_parted(make_cell: MakeCell) -> None:
    """A list that came as a list keeps semicolons inside its items."""
    cell = replace(make_cell(""), listed=("brass; lacquered", {"code": "lead"}))
    assert cell.items() == ("brass; lacquered", {"code": "lead"})
    assert cell.texts() == ("brass; lacquered",)


def test_finding_names_the_cell(make_cell: MakeCell) -> None:
    """A finding says file, row and column."""
    cell = make_cell("x")
    cell.note("wrong-type", Sentence("Wrong."))
    (finding,) = cell.notebook.findings()
    assert finding.where == Where(file="objects.csv", row=2, column="some column")
