from __future__ import annotations

from dataclasses import replace

import pytest

from service.errors import MissingColumnsError
from service.records.rows.notebook import Notebook
from service.records.rows.row import Row
from service.records.sources.columns import OBJECT_COLUMNS
from service.records.sources.headings import table_rows
from service.records.sources.table import Line, Table


def read(*lines: str) -> tuple[list[Row], list[str]]:
    """Read lines of cells divided by bars; give the rows and the codes of findings."""
    notebook = Notebook()
    cells = (Line(row, tuple(line.split("|"))) for row, line in enumerate(lines, start=1))
    rows = list(table_rows(Table("x.csv", tuple(cells)), OBJECT_COLUMNS, notebook))
    return rows, [finding.code for finding in notebook.findings()]


def test_rows_know_their_place_and_source() -> None:
    """A row gives values by column and keeps the cells under the headings as written."""
    (row,), codes = read("Object No|Title |Shelf|", "1|Jar|4|")
    assert (row.text("object_number"), row.text("title"), row.where.row) == ("1", "Jar", 2)
    assert row.source == {"Object No": "1", "Title": "Jar", "Shelf": "4"}
    assert codes == ["unknown-column"]


def test_headings_may_stand_below_other_rows() -> None:
    """A title above the table is noted as skipped, not taken for headings."""
    rows, codes = read("Export of 3 March", "number|title", "1|Jar")
    assert [row.where.row for row in rows] == [3]
    assert codes == ["skipped-row"]


def test_repeated_headings_are_no_record() -> None:
    """Tables pasted together repeat their headings; the row is noted."""
    rows, codes = read("number|title", "1|Jar", "Number|TITLE", "2|Lid")
    assert [row.text("object_number") for row in rows] == ["1", "2"]
    assert codes == ["skipped-row"]


def test_own_name_wins_over_another_word() -> None:
    """Where two headings mean one column, its own name counts and the other is noted."""
    (row,), codes = read("No|object_number|name", "7|1954.3|Jar")
    assert row.text("object_number") == "1954.3"
    assert codes == ["unknown-column"]


def test_first_of_two_like_headings_counts() -> None:
    """Of two headings that both are other words for a column, the first one is read."""
    (row,), codes = read("object_number|number|name", "1954.3|7|Jar")
    assert row.text("object_number") == "1954.3"
    assert codes == ["unknown-column"]


def test_cells_beyond_the_headings_are_noted() -> None:
    """A row shifted by a stray delimiter is pointed at, and its source is whole."""
    (row,), codes = read("number|title", "1|Jar|with lid")
    assert row.source["(column 3)"] == "with lid"
    assert codes == ["extra-cells"]


def test_short_row_has_empty_cells() -> None:
    """A row may end early."""
    (row,), codes = read("number|title|weight", "1")
    assert row.text("weight") == ""
    assert codes == []


@pytest.mark.parametrize("lines", [(), ("title|weight", "Jar|1 kg")], ids=["empty", "no number"])
def test_table_without_numbers_is_refused(lines: tuple[str, ...]) -> None:
    """Nothing can be done with a table whose column of numbers is not found."""
    with pytest.raises(MissingColumnsError, match="object_number"):
        read(*lines)


def test_museums_own_headings_win() -> None:
    """A heading that the museum names is used before the usual ones; one that is absent is told."""
    own = {"title": "Bezeichnung", "weight": "Gewicht"}
    notebook = Notebook()
    cells = [["number", "title", "Bezeichnung"], ["1", "Krug", "Jug"]]
    lines = tuple(Line(row, tuple(line)) for row, line in enumerate(cells, start=1))
    (row,) = table_rows(Table("x.csv", lines), replace(OBJECT_COLUMNS, own=own), notebook)
    assert row.text("title") == "Jug"
    unused, absent = notebook.findings()
    assert "“title”" in unused.message
    assert "“Gewicht”" in absent.message
    assert absent.code == "unknown-column"


def test_lists_with_bars_are_read() -> None:
    """A table in Darwin Core gives lists and names of files; other tables keep their bars."""
    (row,), _codes = read(
        "catalogNumber;otherCatalogNumbers;associatedMedia".replace(";", "|"), "1|a"
    )
    assert row.text("former_numbers") == "a"
    notebook = Notebook()
    lines = (
        Line(1, ("catalogNumber", "otherCatalogNumbers", "associatedMedia", "condition")),
        Line(2, ("1", "a | b", "https://x/1.jpg | https://x/2.jpg", "x | y")),
    )
    (row,) = table_rows(Table("x.csv", lines), OBJECT_COLUMNS, notebook)
    assert row.list_cell("former_numbers").texts() == ("a", "b")
    assert row.list_cell("photos").texts() == ("1.jpg", "2.jpg")
    assert row.text("condition") == "x | y"
    assert row.source["otherCatalogNumbers"] == "a | b"


@pytest.mark.parametrize(
    ("headings", "said"),
    [
        ("dc:identifier|dcterms:title", "Dublin Core: “dc:identifier” is object_number,"),
        ("catalogNumber|dwc:eventDate", "Darwin Core: “catalogNumber” is object_number,"),
        ("number|title", ""),
        ("identifier|title", ""),
    ],
    ids=["Dublin Core", "Darwin Core", "plain", "could be any"],
)
def test_published_terms_are_said_to_be_recognised(headings: str, said: str) -> None:
    """A person is told which headings were taken for terms of a standard, and what they became."""
    notebook = Notebook()
    lines = (Line(1, tuple(headings.split("|"))), Line(2, ("1", "x")))
    list(table_rows(Table("x.csv", lines), OBJECT_COLUMNS, notebook))
    messages = [
        finding.message for finding in notebook.findings() if finding.code == "headings-recognised"
    ]
    assert len(messages) == bool(said)
    assert all(said in message for message in messages)


def test_ignored_headings_are_passed_over_in_silence() -> None:
    """The others that mean nothing are named, and so is one of our own that is not there."""
    notebook = Notebook()
    columns = replace(
        OBJECT_COLUMNS, own={"title": "Was"}, own_stands="in the mapping", ignored=frozenset({"x"})
    )
    lines = (Line(1, ("number", "X", "Y")), Line(2, ("1", "2", "3")))
    list(table_rows(Table("x.csv", lines), columns, notebook))
    told = notebook.findings()
    assert [one.message for one in told] == [
        "Columns not used: “Y”.",
        "There is no heading “Was”, which was to be title.",
    ]
    assert told[1].advice == "Correct the heading in the mapping, or take the line out."
