"""A workbook's sheets to tables, each cell as a person sees it."""

from __future__ import annotations

import io
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime, time, timedelta
from typing import TypeAlias

from python_calamine import CalamineError, CalamineSheet, CalamineWorkbook

from service.errors import TooManyRecordsError, UnreadableFileError
from service.findings import Where
from service.records.rows.notebook import Notebook
from service.records.sources.archive import check_workbook
from service.records.sources.columns import heading_key
from service.records.sources.table import COLUMNS_LIMIT, ROWS_LIMIT, Line, Table

CellValue: TypeAlias = int | float | str | bool | time | date | datetime | timedelta


def read_sheets(
    data: bytes, *, name: str, wanted: Iterable[str], notebook: Notebook
) -> dict[str, Table]:
    """Read the sheets of the wanted names; where none has one, the first sheet for the first name.

    The reader can end the whole process on a hostile sheet, however well it was looked over, so
    this belongs into a child process with limits.

    Raises:
        UnreadableFileError: When the file is no workbook, or a sheet is too wide.
        TooManyRecordsError: When a sheet is too long.
    """
    check_workbook(data, name=name)
    try:
        with CalamineWorkbook.from_filelike(io.BytesIO(data)) as workbook:
            chosen = _choose_sheets(workbook.sheet_names, tuple(wanted))
            _note_others(workbook.sheet_names, chosen, name=name, notebook=notebook)
            return {
                table: _read_sheet(workbook.get_sheet_by_name(sheet), name=f"{name}, sheet {sheet}")
                for table, sheet in chosen.items()
            }
    except (CalamineError, OSError, ValueError) as error:
        raise UnreadableFileError(name, tried=f"it is not a workbook ({error})") from error


def _choose_sheets(sheets: Sequence[str], wanted: Sequence[str]) -> dict[str, str]:
    by_key = {heading_key(sheet): sheet for sheet in reversed(sheets)}
    chosen = {table: by_key[table] for table in wanted if table in by_key}
    return chosen or dict(zip(wanted[:1], sheets[:1], strict=False))


def _note_others(
    sheets: Sequence[str], chosen: Mapping[str, str], *, name: str, notebook: Notebook
) -> None:
    for sheet in sheets:
        if sheet not in chosen.values():
            notebook.note("skipped-sheet", Where(file=name), f"The sheet “{sheet}” was not read.")


def _read_sheet(sheet: CalamineSheet, *, name: str) -> Table:
    # Both are the index of the last one, the row of headings being 0.
    if sheet.total_height > ROWS_LIMIT:
        raise TooManyRecordsError(name, count=sheet.total_height, limit=ROWS_LIMIT)
    if sheet.total_width >= COLUMNS_LIMIT:
        tried = f"it has {sheet.total_width + 1} columns, the limit is {COLUMNS_LIMIT}"
        raise UnreadableFileError(name, tried=tried)
    rows = enumerate(sheet.to_python(skip_empty_area=False), start=1)
    lines = (_make_line(number, cells) for number, cells in rows)
    return Table(name, tuple(line for line in lines if not line.is_blank))


def _make_line(row: int, cells: Sequence[CellValue]) -> Line:
    return Line(
        row,
        tuple(show_cell(cell) for cell in cells),
        frozenset(index for index, cell in enumerate(cells) if not isinstance(cell, str)),
    )


def show_cell(value: CellValue) -> str:
    """Write a cell as a person sees it: whole numbers without ".0", dates as 2026-10-14."""
    if isinstance(value, str):
        return value
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        # Spreadsheets show at most 15 digits, which also hides what binary fractions leave behind.
        return f"{value:.0f}" if value.is_integer() else f"{value:.15g}"
    if isinstance(value, datetime):
        at_midnight = value.time() == time(0)
        return value.date().isoformat() if at_midnight else value.isoformat(sep=" ")
    return str(value)
