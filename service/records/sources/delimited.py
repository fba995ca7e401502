"""Delimited text to a table: delimiter, line ends, quotes, and quotes left open."""

from __future__ import annotations

import csv
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from service.errors import TooManyRecordsError, UnreadableFileError
from service.findings import Where
from service.records.rows.notebook import Notebook
from service.records.sources.columns import heading_key
from service.records.sources.decoding import decode_text
from service.records.sources.table import COLUMNS_LIMIT, ROWS_LIMIT, Line, Table
from service.sentence import Sentence

DELIMITERS = (",", ";", "\t")

LINES_OF_A_CELL_LIMIT = 100
"""A quote that is still open after so many lines was never meant to stay open."""

_HEADING_LINES = 10
_SEPARATOR_LINE = "sep="
_PEEK_LIMIT = 200_000
"""Characters among which the headings stand."""


@dataclass(frozen=True, slots=True)
class Written:
    """What is known beforehand of a table: encoding, delimiter, and the reduced headings to meet.

    An empty encoding or delimiter is found out.
    """

    encoding: str = ""
    delimiter: str = ""
    known: Collection[str] = ()


@dataclass(frozen=True, slots=True)
class Form:
    """How a table is written where something beside it says so."""

    delimiter: str
    quoted: bool
    skipped_lines: int


def read_delimited(data: bytes, *, name: str, written: Written, notebook: Notebook) -> Table:
    """Read a file of delimited text.

    Raises:
        UnreadableFileError: When the file is not text or has too many columns.
        TooManyRecordsError: When it has more rows than can be read.
    """
    text, guessed = decode_text(data, name=name, encoding=written.encoding)
    _note_guess(guessed, name=name, notebook=notebook)
    lines = _cut_lines(text)
    delimiter = _find_delimiter(lines, written)
    records = _cut_records(lines, delimiter, name=name, notebook=notebook)
    return Table(name, _check_limits(records, name=name))


def peek_lines(
    data: bytes, *, name: str, written: Written, lines: int
) -> tuple[tuple[str, ...], ...]:
    """Give the cells of the first lines, for whoever looks for headings alone.

    Raises:
        UnreadableFileError: When the file is not text, or not in the encoding that was named.
    """
    text, _ = decode_text(data, name=name, encoding=written.encoding)
    top = [line for line in _cut_lines(text[:_PEEK_LIMIT]) if line.strip()][: lines + 1]
    delimiter = _find_delimiter(top, written)
    return tuple(tuple(_cut_alone(line, delimiter)) for line in top)


def find_delimiter(data: bytes, *, name: str, written: Written) -> str:
    """Find out what stands between the cells of a file.

    Raises:
        UnreadableFileError: When the file is not text, or not in the encoding that was named.
    """
    text, _ = decode_text(data, name=name, encoding=written.encoding)
    return _find_delimiter(_cut_lines(text[:_PEEK_LIMIT]), written)


def _find_delimiter(lines: list[str], written: Written) -> str:
    if lines[0].casefold().startswith(_SEPARATOR_LINE):
        # Some spreadsheets write the delimiter above the headings; the line keeps its number.
        lines[0] = ""
    return written.delimiter or choose_delimiter(lines[:_HEADING_LINES], known=written.known)


def read_described(data: bytes, *, name: str, form: Form, notebook: Notebook) -> Table:
    """Read a file of delimited text whose form is known; lines that are no records are left out.

    Raises:
        UnreadableFileError: When the file is not text or has too many columns.
        TooManyRecordsError: When it has more rows than can be read.
    """
    text, guessed = decode_text(data, name=name)
    _note_guess(guessed, name=name, notebook=notebook)
    lines = _cut_lines(text)
    if form.quoted:
        records = _cut_records(lines, form.delimiter, name=name, notebook=notebook)
    else:
        cut = (Line(row, tuple(line.split(form.delimiter))) for row, line in enumerate(lines, 1))
        records = (line for line in cut if not line.is_blank)
    wanted = (line for line in records if line.row > form.skipped_lines)
    return Table(name, _check_limits(wanted, name=name))


def _note_guess(guessed: str, *, name: str, notebook: Notebook) -> None:
    if guessed:
        message = Sentence("The file is not UTF-8; it was read as {guessed}.", guessed=guessed)
        notebook.note("guessed-encoding", Where(file=name), message)


def _cut_lines(text: str) -> list[str]:
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")


def choose_delimiter(lines: Sequence[str], *, known: Collection[str]) -> str:
    """Choose the delimiter that gives most known headings in one of the lines, then most cells."""

    def score(delimiter: str) -> tuple[int, int]:
        cells = [_cut_alone(line, delimiter) for line in lines]
        headings = max(sum(heading_key(cell) in known for cell in row) for row in cells)
        return headings, max(len(row) for row in cells)

    return max(DELIMITERS, key=score)


def _cut_records(
    lines: Sequence[str], delimiter: str, *, name: str, notebook: Notebook
) -> Iterator[Line]:
    """Cut lines into rows; a quote that is never closed holds for its own line alone."""
    at = 0
    row = 0
    while at < len(lines):
        row += 1
        try:
            cells, used = _cut_next(lines, at, delimiter)
        except csv.Error:
            cells, used = _cut_alone(lines[at], delimiter), 1
            where = Where(file=name, row=row)
            notebook.note(
                "unbalanced-quote", where, Sentence("A quotation mark of the row has no partner.")
            )
        at += used
        line = Line(row, tuple(cells))
        if not line.is_blank:
            yield line


def _cut_next(lines: Sequence[str], at: int, delimiter: str) -> tuple[list[str], int]:
    """Cut the row that begins at a line; also give the number of lines it takes.

    Raises:
        csv.Error: When a quote stays open, or something stands between a quote and a delimiter.
    """
    if '"' not in lines[at]:
        return lines[at].split(delimiter), 1
    following = (line + "\n" for line in lines[at : at + LINES_OF_A_CELL_LIMIT])
    reader = csv.reader(following, delimiter=delimiter, strict=True)
    return next(reader), reader.line_num


def _cut_alone(line: str, delimiter: str) -> list[str]:
    """Cut one line whatever its quotes do."""
    try:
        return next(csv.reader([line], delimiter=delimiter, strict=True), [])
    except csv.Error:
        return [cell.removeprefix('"').removesuffix('"') for cell in line.split(delimiter)]


def _check_limits(lines: Iterator[Line], *, name: str) -> tuple[Line, ...]:
    kept: list[Line] = []
    for line in lines:
        # One more than the limit, for the headings.
        if len(kept) > ROWS_LIMIT:
            raise TooManyRecordsError(name, count=len(kept), limit=ROWS_LIMIT)
        if len(line.cells) > COLUMNS_LIMIT and any(line.cells[COLUMNS_LIMIT:]):
            tried = Sentence(
                "row {row} has {cells} columns, the limit is {columns_limit}",
                row=line.row,
                cells=len(line.cells),
                columns_limit=COLUMNS_LIMIT,
            )
            raise UnreadableFileError(name, tried=tried)
        kept.append(line)
    return tuple(kept)
