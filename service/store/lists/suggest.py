"""Suggests numbers while somebody types: few, at once, however large the store is."""

from __future__ import annotations

from dataclasses import dataclass

from sqlalchemy import Column, ColumnElement, Connection, Table, and_, or_, select

from service.store.lists.index import CONTAINER_WORDS, OBJECT_WORDS, Index, find_keys
from service.store.lists.words import split_words
from service.store.tables import containers, objects

MOST = 50
_LAST = "\U0010ffff"


@dataclass(frozen=True, slots=True)
class Suggestion:
    """A number with the title that tells whether it is the one that is meant."""

    number: str
    title: str


@dataclass(frozen=True, slots=True)
class _Kind:
    """Where records of one kind stand, and which column is their number."""

    table: Table
    number: Column[str]
    index: Index


_OBJECTS = _Kind(objects, objects.c.object_number, OBJECT_WORDS)
_CONTAINERS = _Kind(containers, containers.c.container_number, CONTAINER_WORDS)


def suggest_objects(
    connection: Connection, typed: str, *, limit: int = 8
) -> tuple[Suggestion, ...]:
    """Suggest objects: first numbers that begin as typed, then what holds words that do."""
    return _suggest(connection, _OBJECTS, typed, limit)


def suggest_containers(
    connection: Connection, typed: str, *, limit: int = 8
) -> tuple[Suggestion, ...]:
    """Suggest containers: first numbers that begin as typed, then what holds words that do."""
    return _suggest(connection, _CONTAINERS, typed, limit)


def _suggest(connection: Connection, kind: _Kind, typed: str, limit: int) -> tuple[Suggestion, ...]:
    wanted = " ".join(typed.split())
    limit = max(1, min(limit, MOST))
    if not wanted:
        return ()
    columns = kind.table.c
    query = select(kind.number, columns.title).order_by(columns.sort_key, columns.id).limit(limit)
    beginnings = dict.fromkeys((wanted, wanted.upper(), wanted.lower()))
    begun = or_(*(_begins(connection, kind.number, one) for one in beginnings))
    found: dict[str, str] = dict(connection.execute(query.where(begun)).all())
    if len(found) < limit:
        keys = find_keys(connection, kind.index, split_words(wanted), limit=limit)
        for number, title in connection.execute(query.where(columns.id.in_(keys))).all():
            found.setdefault(number, title)
    return tuple(Suggestion(number, title) for number, title in found.items())[:limit]


def _begins(connection: Connection, column: Column[str], wanted: str) -> ColumnElement[bool]:
    """Ask for what begins so in a way that the index of the column answers."""
    if connection.dialect.name == "sqlite":
        return and_(column >= wanted, column < wanted + _LAST)
    return column.startswith(wanted, autoescape=True)
