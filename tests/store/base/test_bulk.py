from __future__ import annotations

from sqlalchemy import Connection, insert

from service.store.base.bulk import NUMBERS_A_QUERY, execute_rows, in_portions
from service.store.tables import actors
from tests.store.made import STAMP, rows


def test_portions_lose_nothing() -> None:
    """Portions put together are the list, and none is longer than a query takes."""
    numbers = list(range(2 * NUMBERS_A_QUERY + 1))
    portions = list(in_portions(numbers))
    assert [number for portion in portions for number in portion] == numbers
    assert max(map(len, portions)) == NUMBERS_A_QUERY


def test_no_rows_no_statement(connection: Connection) -> None:
    """An empty list executes nothing; a full one every row."""
    execute_rows(connection, insert(actors), [])
    assert [row[1] for row in rows(connection, actors)] == [STAMP.actor]
    execute_rows(connection, insert(actors), [{"name": "b"}, {"name": "c"}])
    assert [row[1] for row in rows(connection, actors)] == [STAMP.actor, "b", "c"]
