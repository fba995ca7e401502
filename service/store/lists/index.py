"""Keeps the words of records in the full-text index of the database: FTS5, or tsvector."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, Integer, Select, TextClause, column, select, text

from service.store.base.bulk import execute_rows, in_portions


@dataclass(frozen=True, slots=True)
class Index:
    """One index, by the name of its table, which every database makes in its own way."""

    table: str


OBJECT_WORDS = Index("object_words")
CONTAINER_WORDS = Index("container_words")

_KEY = column("key", Integer)
_INSERT = {
    "sqlite": "INSERT INTO {table} (rowid, words) VALUES (:key, :words)",
    "postgresql": "INSERT INTO {table} (key, words) VALUES (:key, to_tsvector('simple', :words))",
}
_DELETE = {
    "sqlite": "DELETE FROM {table} WHERE rowid = :key",
    "postgresql": "DELETE FROM {table} WHERE key = :key",
}
_FIND = {
    "sqlite": "SELECT rowid AS key FROM {table} WHERE {table} MATCH :query",
    "postgresql": "SELECT key FROM {table} WHERE words @@ to_tsquery('simple', :query)",
}


def keep_words(connection: Connection, index: Index, words: Mapping[int, str]) -> None:
    """Keep the words of rows by their keys, in place of those kept before."""
    rows: list[dict[str, object]] = [{"key": key, "words": said} for key, said in words.items()]
    for some in in_portions(rows):
        execute_rows(connection, _statement(connection, _DELETE, index), some)
        execute_rows(connection, _statement(connection, _INSERT, index), some)


def forget_words(connection: Connection, index: Index, keys: Sequence[int]) -> None:
    """Take the words of rows away."""
    rows = [{"key": key} for key in keys]
    execute_rows(connection, _statement(connection, _DELETE, index), rows)


def find_keys(
    connection: Connection, index: Index, wanted: Sequence[str], *, limit: int | None = None
) -> list[int]:
    """Find the rows that hold a word beginning with each of those wanted; none wanted, none found.

    With a limit any so many of them are given, and no more are looked for.

    Words are letters and figures only, as `split_words` gives them, so none is query syntax.
    """
    if not wanted:
        return []
    query = query_keys(connection, index, wanted).limit(limit)
    return list(connection.execute(query).scalars())


def query_keys(connection: Connection, index: Index, wanted: Sequence[str]) -> Select[int]:
    """Give the query for such rows, to stand in another; at least one word has to be wanted."""
    if connection.dialect.name == "sqlite":
        query = " AND ".join(f'"{word}"*' for word in wanted)
    else:
        query = " & ".join(f"'{word}':*" for word in wanted)
    rows = _statement(connection, _FIND, index).bindparams(query=query).columns(_KEY).subquery()
    return select(rows.c.key)


def _statement(connection: Connection, by_dialect: Mapping[str, str], index: Index) -> TextClause:
    return text(by_dialect[connection.dialect.name].format(table=index.table))
