"""A workbook's sheets to tables, each cell as a person sees it."""

from __future__ import annotations

import io
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from datetime import date, datetime, time, timedelta
from typing import TypeAlias

from python_calamine import CalamineError, CalamineSheet, CalamineWorkbook

from service.errors import TooManyRecordsError, UnreadableFileError
from service.findings import Where
from service.records.rows.notebook import Notebook
from service.records.sources.archive import check_workbook
from service.records.sources.columns import heading_key
from service.records.sources.table import COLUMNS_LIMIT, ROWS_LIMIT, Line, Table
from service.sentence import Sentence

CellValue: TypeAlias = int | float | str | bool | time | date | datetime | timedelta


def read_sheets(
    data: bytes,
    *,
    name: str,
    wanted: Iterable[str],
    notebook: Notebook,
    named: Mapping[str, str] | None = None,
) -> dict[str, Table]:
    """Read the sheets of the wanted names; where none has one, the first sheet for the first name.

    `named` says of some of them which sheet it is.

    The reader can end the whole process on a hostile sheet, however well it was looked over, so
    this belongs into a child process with limits.

    Raises:
        UnreadableFileError: When the file is no workbook, a sheet is too wide, or a named one is
            not there.
        TooManyRecordsError: When a sheet is too long.
    """
    with _opened(data, name=name) as workbook:
        sheets = workbook.sheet_names
        own = {table: _find_named(sheets, one, name) for table, one in (named or {}).items()}
        chosen = own | _choose_sheets(sheets, [one for one in wanted if one not in own], own)
        _note_others(sheets, chosen, name=name, notebook=notebook)
        return {
            table: _read_sheet(workbook.get_sheet_by_name(sheet), name=f"{name}, sheet {sheet}")
            for table, sheet in chosen.items()
        }


@contextmanager
def _opened(data: bytes, *, name: str) -> Iterator[CalamineWorkbook]:
    """Open a workbook that has been looked over.

    Raises:
        UnreadableFileError: When it is none, also while it is read.
        TooManyRecordsError: When a sheet is too long.
    """
    check_workbook(data, name=name)
    try:
        with CalamineWorkbook.from_filelike(io.BytesIO(data)) as workbook:
            yield workbook
    except (CalamineError, OSError, ValueError) as error:
        raise UnreadableFileError(
            name, tried=Sentence("it is not a workbook ({error})", error=error)
        ) from error


def peek_sheets(data: bytes, *, name: str, lines: int) -> dict[str, tuple[tuple[str, ...], ...]]:
    """Give the cells of the first lines of every sheet, for whoever looks for headings alone.

    Raises:
        UnreadableFileError: When the file is no workbook, or a sheet is too wide.
        TooManyRecordsError: When a sheet is too long.
    """
    with _opened(data, name=name) as workbook:
        return {
            sheet: _peek_sheet(workbook.get_sheet_by_name(sheet), lines)
            for sheet in workbook.sheet_names
        }


def list_sheets(data: bytes, *, name: str) -> tuple[str, ...]:
    """Name the sheets of a workbook.

    Raises:
        UnreadableFileError: When the file is no workbook.
        TooManyRecordsError: When a sheet is too long.
    """
    with _opened(data, name=name) as workbook:
        return tuple(workbook.sheet_names)


def choose_sheet(sheets: Sequence[str], wanted: str) -> str:
    """Choose the sheet of a name, else the first one; empty where there are none."""
    same = (sheet for sheet in sheets if heading_key(sheet) == heading_key(wanted))
    return next(same, sheets[0] if sheets else "")


def _peek_sheet(sheet: CalamineSheet, lines: int) -> tuple[tuple[str, ...], ...]:
    rows = sheet.to_python(skip_empty_area=False, nrows=10 * lines)
    shown = [tuple(show_cell(cell) for cell in cells) for cells in rows]
    return tuple([cells for cells in shown if any(cells)][:lines])


def _find_named(sheets: Sequence[str], wanted: str, name: str) -> str:
    """Give the sheet of a name.

    Raises:
        UnreadableFileError: When there is none.
    """
    for sheet in sheets:
        if heading_key(sheet) == heading_key(wanted):
            return sheet
    tried = Sentence(
        "it has no sheet {wanted!r}, only {sheets}",
        wanted=wanted,
        sheets=", ".join(sheets) or "none at all",
    )
    raise UnreadableFileError(name, tried=tried)


def _choose_sheets(
    sheets: Sequence[str], wanted: Sequence[str], own: Mapping[str, str]
) -> dict[str, str]:
    by_key = {heading_key(sheet): sheet for sheet in reversed(sheets)}
    chosen = {table: by_key[table] for table in wanted if table in by_key}
    return chosen if chosen or own else dict(zip(wanted[:1], sheets[:1], strict=False))


def _note_others(
    sheets: Sequence[str], chosen: Mapping[str, str], *, name: str, notebook: Notebook
) -> None:
    for sheet in sheets:
        if sheet not in chosen.values():
            notebook.note(
                "skipped-sheet",
                Where(file=name),
                Sentence("The sheet “{sheet}” was not read.", sheet=sheet),
            )


def _read_sheet(sheet: CalamineSheet, *, name: str) -> Table:
    # Both are the index of the last one, the row of headings being 0.
    if sheet.total_height > ROWS_LIMIT:
        raise TooManyRecordsError(name, count=sheet.total_height, limit=ROWS_LIMIT)
    if sheet.total_width >= COLUMNS_LIMIT:
        tried = Sentence(
            "it has {total_width} columns, the limit is {columns_limit}",
            total_width=sheet.total_width + 1,
            columns_limit=COLUMNS_LIMIT,
        )
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
