"""A first look into a table: its headings, some rows, and what each heading may mean."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from service.records.mapping.choose import NO_MAPPINGS, Mappings, find_fitting
from service.records.mapping.mapping import AXES, NEEDED, OBJECTS, TABLE_COLUMNS, ColumnMapping
from service.records.rows.notebook import Notebook
from service.records.rows.text import tidy_text
from service.records.sources.columns import Columns, heading_key
from service.records.sources.decoding import decode_text, name_unicode
from service.records.sources.delimited import Written, find_delimiter, read_delimited
from service.records.sources.headings import LINES_TO_LOOK_AT
from service.records.sources.table import Line, Table
from service.records.sources.workbook import choose_sheet, list_sheets, read_sheets

ROWS_SHOWN = 20
_CELL_SHOWN = 200

_WORKBOOKS = frozenset({"xlsx", "xlsm", "ods"})
_DESCRIBED = frozenset({"json", "xml", "zip"})


@dataclass(frozen=True, slots=True)
class Sample:
    """What a file looks like before it is taken in.

    Attributes:
        file: Its name.
        form: "delimited", "workbook", or "described": that says itself what its fields are.
        table: What its rows are taken for.
        headings: The headings as they stand.
        rows: The first rows below them, long cells cut short.
        guess: What each heading seems to mean; those that mean nothing known stand in neither list.
        unknown: Headings of which nothing is known.
        missing: Fields that every row needs and no heading seems to be.
        encoding: How the file is written, named where it is text.
        delimiter: What stands between its cells, where it is text.
        sheet: The sheet of a workbook that was looked into.
        sheets: All sheets of a workbook.
        saved: The saved mapping that was made for these headings; empty where there is none.
    """

    file: str
    form: str
    table: str = OBJECTS
    headings: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()
    guess: ColumnMapping = ColumnMapping()  # noqa: RUF009 - it is frozen
    unknown: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()
    encoding: str = ""
    delimiter: str = ""
    sheet: str = ""
    sheets: tuple[str, ...] = ()
    saved: str = ""


def read_sample(
    data: bytes, *, name: str, like: ColumnMapping, mappings: Mappings = NO_MAPPINGS
) -> Sample:
    """Look into a file; `like` says what its rows are and, where known, how it is written.

    A workbook reader can end the whole process on a hostile file, so this belongs into a child.

    Raises:
        UnreadableFileError: When the file cannot be read as a whole.
        TooManyRecordsError: When a table is too long.
    """
    ending = name.rsplit(".", 1)[-1].casefold()
    if ending in _DESCRIBED:
        return Sample(name, "described", like.table)
    if ending in _WORKBOOKS:
        found, looked_at = _look_into_workbook(data, name, like)
    else:
        found, looked_at = _look_into_text(data, name, like)
    return _describe(found, looked_at, mappings)


def _look_into_text(data: bytes, name: str, like: ColumnMapping) -> tuple[Sample, Table]:
    """Read a file of delimited text as it seems to be written."""
    known = frozenset(TABLE_COLUMNS[like.table].by_key())
    written = Written(like.encoding, like.delimiter, known)
    _, guessed = decode_text(data, name=name, encoding=written.encoding)
    encoding = written.encoding or guessed.casefold() or name_unicode(data)
    delimiter = find_delimiter(data, name=name, written=written)
    found = Sample(name, "delimited", like.table, encoding=encoding, delimiter=delimiter)
    return found, read_delimited(data, name=name, written=written, notebook=Notebook())


def _look_into_workbook(data: bytes, name: str, like: ColumnMapping) -> tuple[Sample, Table]:
    """Read the sheet that is asked for, else the one of the table's name, else the first."""
    sheets = list_sheets(data, name=name)
    sheet = like.sheet or choose_sheet(sheets, like.table)
    found = Sample(name, "workbook", like.table, sheet=sheet, sheets=sheets)
    read = read_sheets(data, name=name, wanted=(), named={like.table: sheet}, notebook=Notebook())
    return found, read[like.table]


def _describe(found: Sample, looked_at: Table, mappings: Mappings) -> Sample:
    columns = TABLE_COLUMNS[found.table]
    at = _find_headings(looked_at.lines, columns)
    line = looked_at.lines[at].cells if looked_at.lines else ()
    headings = tuple(tidy_text(cell) for cell in line)
    guess = _guess(headings, columns, found)
    meant = {heading for heading, _ in guess.headings}
    fields = {name for _, name in guess.headings}
    below = looked_at.lines[at + 1 : at + 1 + ROWS_SHOWN]
    return replace(
        found,
        headings=headings,
        rows=tuple(tuple(cell[:_CELL_SHOWN] for cell in row.cells) for row in below),
        guess=guess,
        unknown=tuple(one for one in headings if one and one not in meant),
        missing=tuple(name for name in NEEDED[found.table] if name not in fields),
        saved=find_fitting(mappings, found.table, headings),
    )


def _find_headings(lines: Sequence[Line], columns: Columns) -> int:
    """Find the line with most known headings; where none has any, that with most cells filled."""

    def score(index: int) -> tuple[int, int]:
        cells = [cell for cell in lines[index].cells if cell.strip()]
        return sum(columns.find(cell) is not None for cell in cells), len(cells)

    return max(range(min(len(lines), LINES_TO_LOOK_AT)), key=score, default=0)


def _guess(headings: Sequence[str], columns: Columns, found: Sample) -> ColumnMapping:
    """Guess what headings mean: for each field the surest of them, the first of those alike."""
    chosen: dict[str, str] = {}
    for heading in headings:
        name = columns.find(heading) or _find_axis(heading, found.table)
        if name is not None and (
            name not in chosen
            or columns.closeness(heading, name) > columns.closeness(chosen[name], name)
        ):
            chosen[name] = heading
    if "dimensions" in chosen:
        chosen = {name: heading for name, heading in chosen.items() if name not in AXES}
    units = _units(chosen)
    pairs = tuple((heading, name) for name, heading in chosen.items())
    return ColumnMapping(found.table, pairs, units=units, sheet=found.sheet)


def _find_axis(heading: str, table: str) -> str | None:
    key = heading_key(heading)
    if table != OBJECTS:
        return None
    return next((axis for axis in AXES if key in {axis, *(axis + unit for unit in _UNITS)}), None)


_UNITS = ("mm", "cm", "in")


def _units(chosen: dict[str, str]) -> dict[str, str]:
    """Give the units that headings such as "Height (cm)" say."""
    return {
        name: unit
        for name, heading in chosen.items()
        if name in AXES
        for unit in _UNITS
        if heading_key(heading) == name + unit
    }
