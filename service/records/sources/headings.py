"""Tables to rows: which line holds the headings, and which column is which."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from service.errors import MissingColumnsError
from service.findings import Where
from service.records.rows.notebook import Notebook
from service.records.rows.row import Row
from service.records.rows.text import quote_text, tidy_text
from service.records.sources.columns import Columns, heading_key
from service.records.sources.standards import name_standard, read_piped
from service.records.sources.table import Line, Table
from service.sentence import Sentence

LINES_TO_LOOK_AT = 10
"""Lines near the top of a table among which its headings stand."""


def table_rows(table: Table, columns: Columns, notebook: Notebook) -> Iterator[Row]:
    """Give the rows below the headings; lines that are no records are noted.

    Raises:
        MissingColumnsError: When no line near the top names the column of numbers.
    """
    at = _find_headings(table, columns)
    headings = [tidy_text(cell) for cell in table.lines[at].cells]
    by_column = _choose_columns(headings, columns, where=_where(table, at), notebook=notebook)
    piped = [column for column, index in by_column.items() if columns.is_piped(headings[index])]
    for index in range(at):
        notebook.note(
            "skipped-row", _where(table, index), Sentence("The row stands above the headings.")
        )
    for line in table.lines[at + 1 :]:
        where = Where(file=table.name, row=line.row)
        if _repeats(line, headings):
            notebook.note("skipped-row", where, Sentence("The row repeats the headings."))
            continue
        if any(cell.strip() for cell in line.cells[len(headings) :]):
            notebook.note(
                "extra-cells", where, Sentence("The row has more cells than there are headings.")
            )
        row = _make_row(line, headings, by_column, where=where, notebook=notebook)
        yield _rewrite(row, piped) if piped else row


def _repeats(line: Line, headings: Sequence[str]) -> bool:
    """Tell whether a line says what the headings say, whatever the case and the blanks."""
    return len(line.cells) == len(headings) and all(
        heading_key(cell) == heading_key(heading)
        for cell, heading in zip(line.cells, headings, strict=True)
    )


def _where(table: Table, index: int) -> Where:
    return Where(file=table.name, row=table.lines[index].row)


def _find_headings(table: Table, columns: Columns) -> int:
    for index, line in enumerate(table.lines[:LINES_TO_LOOK_AT]):
        if any(columns.find(cell) == columns.number for cell in line.cells):
            return index
    found = [cell for cell in table.lines[0].cells if cell.strip()] if table.lines else []
    raise MissingColumnsError(table.name, wanted=[columns.number], found=found)


def _choose_columns(
    headings: Sequence[str], columns: Columns, *, where: Where, notebook: Notebook
) -> dict[str, int]:
    """Choose an index for each column: the surest heading, the first one of those alike."""
    by_column: dict[str, int] = {}
    for index, heading in enumerate(headings):
        column = columns.find(heading)
        if column is not None and (
            column not in by_column
            or columns.closeness(heading, column)
            > columns.closeness(headings[by_column[column]], column)
        ):
            by_column[column] = index
    unused = [
        heading
        for index, heading in enumerate(headings)
        if heading
        and index not in by_column.values()
        and heading_key(heading) not in columns.ignored
    ]
    if unused:
        names = ", ".join(quote_text(heading) for heading in unused)
        notebook.note("unknown-column", where, Sentence("Columns not used: {names}.", names=names))
    _note_absent(headings, columns, where=where, notebook=notebook)
    _note_standards(headings, by_column, where=where, notebook=notebook)
    return by_column


def _note_standards(
    headings: Sequence[str], by_column: Mapping[str, int], *, where: Where, notebook: Notebook
) -> None:
    """Say which headings were understood as terms of a published standard, and as what."""
    read: dict[str, list[str]] = {}
    for column, index in by_column.items():
        if standard := name_standard(headings[index]):
            read.setdefault(standard, []).append(f"{quote_text(headings[index])} is {column}")
    for standard, said in read.items():
        notebook.note(
            "headings-recognised",
            where,
            Sentence("Read as {standard}: {said}.", standard=standard, said=", ".join(said)),
        )


def _note_absent(
    headings: Sequence[str], columns: Columns, *, where: Where, notebook: Notebook
) -> None:
    """Note headings that the museum says it has and the table has not."""
    present = {heading_key(heading) for heading in headings}
    for column, heading in columns.own.items():
        if heading_key(heading) not in present:
            message = Sentence(
                "There is no heading {heading}, which was to be {column}.",
                heading=quote_text(heading),
                column=column,
            )
            advice = Sentence(
                "Correct the heading {stands}, or take the line out.", stands=columns.own_stands
            )
            notebook.note("unknown-column", where, message, advice=advice)


def _make_row(
    line: Line,
    headings: Sequence[str],
    by_column: dict[str, int],
    *,
    where: Where,
    notebook: Notebook,
) -> Row:
    return Row(
        values={
            column: line.cells[index]
            for column, index in by_column.items()
            if index < len(line.cells)
        },
        headings={column: headings[index] for column, index in by_column.items()},
        where=where,
        notebook=notebook,
        source=_source(line, headings),
        retyped=frozenset(column for column, index in by_column.items() if index in line.retyped),
    )


def _rewrite(row: Row, piped: Sequence[str]) -> Row:
    """Give a row with its piped lists written as ours are."""
    values = dict(row.values)
    for column in piped:
        value = values.get(column)
        if isinstance(value, str):
            values[column] = read_piped(value, column=column)
    return replace(row, values=values)


def _source(line: Line, headings: Sequence[str]) -> dict[str, str]:
    """Keep the row as it came; cells without a heading of their own get the column's number."""
    source: dict[str, str] = {}
    for index, cell in enumerate(line.cells):
        heading = headings[index] if index < len(headings) else ""
        if not heading or heading in source:
            heading = f"{heading} (column {index + 1})".strip()
        if cell:
            source[heading] = cell
    return source
