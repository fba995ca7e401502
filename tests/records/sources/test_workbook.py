from __future__ import annotations

import io
from collections.abc import Mapping, Sequence
from datetime import date, datetime

import pytest
import xlsxwriter

from service.errors import TooManyRecordsError, UnreadableFileError
from service.records.rows.notebook import Notebook
from service.records.sources import workbook
from service.records.sources.workbook import (
    CellValue,
    choose_sheet,
    list_sheets,
    peek_sheets,
    read_sheets,
    show_cell,
)

WANTED = ("objects", "containers", "packings")


def make_workbook(sheets: Mapping[str, Sequence[Sequence[object]]]) -> bytes:
    """Write a workbook with these rows on these sheets."""
    target = io.BytesIO()
    with xlsxwriter.Workbook(target, {"default_date_format": "yyyy-mm-dd"}) as book:
        for name, rows in sheets.items():
            sheet = book.add_worksheet(name)
            for at, cells in enumerate(rows):
                sheet.write_row(at, 0, cells)
    return target.getvalue()


def test_cells_are_read_as_shown() -> None:
    """Text stays text with its zeros, and other cells are written as a person sees them."""
    rows: list[list[object]] = [
        ["object_number"],
        ["00123"],
        [1931.0],
        [1931.14],
        [date(2014, 3, 12)],
        [True],
    ]
    data = make_workbook({"Objects": rows})
    table = read_sheets(data, name="x.xlsx", wanted=WANTED, notebook=Notebook())["objects"]
    assert [line.cells[0] for line in table.lines] == [
        "object_number",
        "00123",
        "1931",
        "1931.14",
        "2014-03-12",
        "yes",
    ]
    assert [bool(line.retyped) for line in table.lines] == [False, False, True, True, True, True]


def test_rows_keep_the_numbers_of_the_sheet() -> None:
    """Blank rows above and between do not shift what a finding points at."""
    data = make_workbook({"objects": [[], ["", "number"], [], ["", "1"]]})
    table = read_sheets(data, name="x.xlsx", wanted=WANTED, notebook=Notebook())["objects"]
    assert [(line.row, line.cells) for line in table.lines] == [(2, ("", "number")), (4, ("", "1"))]


def test_sheets_are_found_by_name_and_others_noted() -> None:
    """Sheets of other names are not read, and that is said."""
    notebook = Notebook()
    data = make_workbook({"Notes": [["x"]], "PACKINGS": [["y"]], "objects": [["z"]]})
    tables = read_sheets(data, name="x.xlsx", wanted=WANTED, notebook=notebook)
    assert {table: sheet.lines[0].cells for table, sheet in tables.items()} == {
        "objects": ("z",),
        "packings": ("y",),
    }
    assert [finding.code for finding in notebook.findings()] == ["skipped-sheet"]


def test_first_sheet_holds_objects_where_none_is_named() -> None:
    """An export whose sheet has any name is read as a list of objects."""
    data = make_workbook({"Export": [["number"]], "Sheet2": []})
    tables = read_sheets(data, name="x.xlsx", wanted=WANTED, notebook=Notebook())
    assert {table: sheet.name for table, sheet in tables.items()} == {
        "objects": "x.xlsx, sheet Export"
    }


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (30.400000000000002, "30.4"),
        (1e15, "1000000000000000"),
        (-2.0, "-2"),
        (datetime(2026, 10, 14, 9, 30), "2026-10-14 09:30:00"),  # noqa: DTZ001 (sheets have no zones)
        (datetime(2026, 10, 14), "2026-10-14"),  # noqa: DTZ001 (sheets have no zones)
        (False, "no"),
    ],
    ids=str,
)
def test_shown_value_hides_the_machine(value: CellValue, shown: str) -> None:
    """Binary fractions, midnight and ".0" are not what a person wrote."""
    assert show_cell(value) == shown


@pytest.mark.parametrize("data", [b"", b"number;title\n1;a", b"PK\x03\x04"], ids=len)
def test_file_that_is_no_workbook_is_refused(data: bytes) -> None:
    """A text file with the ending of a workbook is named for what it is not."""
    with pytest.raises(UnreadableFileError, match="not an XLSX workbook"):
        read_sheets(data, name="x.xlsx", wanted=WANTED, notebook=Notebook())


@pytest.mark.parametrize(
    ("limit", "error"),
    [("ROWS_LIMIT", TooManyRecordsError), ("COLUMNS_LIMIT", UnreadableFileError)],
)
def test_sheet_past_the_limits_is_refused(
    limit: str, error: type[Exception], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A sheet whose cells carry no addresses is still counted before it is read."""
    monkeypatch.setattr(workbook, limit, 2)
    data = make_workbook({"objects": [["number", "title", "period"], *[["1", "a", "b"]] * 4]})
    with pytest.raises(error):
        read_sheets(data, name="o.xlsx", wanted=WANTED, notebook=Notebook())


def test_sheets_are_listed_and_looked_into() -> None:
    """The first rows that hold anything, of every sheet."""
    rows = [["", ""], ["No", "Was"], [], ["1", "x"]]
    data = make_workbook({"Eins": rows, "Zwei": []})
    assert list_sheets(data, name="x.xlsx") == ("Eins", "Zwei")
    assert peek_sheets(data, name="x.xlsx", lines=2) == {
        "Eins": (("No", "Was"), ("1", "x")),
        "Zwei": (),
    }
    assert [choose_sheet(("Eins", "Zwei"), name) for name in ("zwei", "x")] == ["Zwei", "Eins"]
    assert choose_sheet((), "x") == ""
    with pytest.raises(UnreadableFileError):
        list_sheets(b"no workbook", name="x.xlsx")


def test_a_sheet_that_is_named_is_read() -> None:
    """Whatever it is called; the others are found by their names, and none is read for them."""
    data = make_workbook({"objects": [["a"]], "Blatt 2": [["b"]], "packings": [["c"]]})
    read = read_sheets(
        data, name="x.xlsx", wanted=WANTED, named={"objects": "blatt 2"}, notebook=Notebook()
    )
    assert {table: one.lines[0].cells for table, one in read.items()} == {
        "objects": ("b",),
        "packings": ("c",),
    }
