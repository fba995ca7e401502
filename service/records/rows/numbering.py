"""The number a row is known by: it must be there, once, and as the museum wrote it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from service.records.rows.row import Row
from service.records.rows.said import SaidColumns
from service.records.rows.text import quote_text
from service.sentence import Sentence

# What spreadsheets make of numbers: 1.9E+05, 14-Mar, Mar-14, 03/04/1972.
_CHANGED = re.compile(
    r"[0-9]+(?:[.,][0-9]+)?E[+-]?[0-9]+"
    r"|[0-9]{1,2}-(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*(?:-[0-9]{2,4})?"
    r"|(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*-[0-9]{2,4}"
    r"|[0-9]{1,2}/[0-9]{1,2}/[0-9]{4}",
    re.IGNORECASE,
)


def read_number(row: Row, column: str) -> str:
    """Read an object's or container's number; one a spreadsheet may have changed is noted."""
    cell = row.cell(column)
    if cell.text and (column in row.retyped or _CHANGED.fullmatch(cell.text)):
        why = (
            Sentence("was not stored as text")
            if column in row.retyped
            else Sentence("looks changed")
        )
        cell.note(
            "number-like-object-number",
            Sentence("The number {text} {why}.", text=quote_text(cell.text), why=why),
        )
    return cell.text


def unique_rows(
    rows: Iterable[Row], column: str, said: SaidColumns | None = None
) -> Iterator[tuple[str, Row]]:
    """Give the rows that have a number of their own, with the number; the first of two wins."""
    seen: set[str] = set()
    for row in rows:
        number = read_number(row, column)
        cell = row.cell(column)
        if not number:
            cell.note("row-without-number", Sentence("The row has no number."))
        elif number in seen:
            cell.note(
                "duplicate-number",
                Sentence("The number {number} was there before.", number=quote_text(number)),
            )
        else:
            seen.add(number)
            if said is not None:
                said.note(number, row)
            yield number, row
