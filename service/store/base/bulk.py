"""Many rows or numbers at once, in portions that every database takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TypeVar

from sqlalchemy import Connection, Executable, Table, select

T = TypeVar("T")

ROWS_A_STATEMENT = 20_000
NUMBERS_A_QUERY = 5_000
"""SQLite takes 32,766 values in one query (its default limit), other databases about as many."""


def execute_rows(
    connection: Connection, statement: Executable, rows: Sequence[Mapping[str, object]]
) -> None:
    """Execute a statement once for each row; no rows, no statement."""
    for first in range(0, len(rows), ROWS_A_STATEMENT):
        connection.execute(statement, rows[first : first + ROWS_A_STATEMENT])


def in_portions(values: Sequence[T]) -> Iterator[Sequence[T]]:
    """Cut a list of numbers into portions that one query can name."""
    for first in range(0, len(values), NUMBERS_A_QUERY):
        yield values[first : first + NUMBERS_A_QUERY]


def load_keys(
    connection: Connection, table: Table, column: str, numbers: Sequence[str]
) -> dict[str, int]:
    """Find the keys of the rows that are there, by what a column names them."""
    keys: dict[str, int] = {}
    for some in in_portions(numbers):
        query = select(table.c[column], table.c.id).where(table.c[column].in_(some))
        keys.update(dict(connection.execute(query).all()))
    return keys
