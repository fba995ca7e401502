"""All containers as one walks: by location, and what lies in another right behind it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, select

from service.store.tables import containers, packings, places


@dataclass(frozen=True, slots=True)
class Stand:
    """A container where one meets it; `location` is that of the outermost one it lies in.

    `outermost` is its own number where it lies in none; `is_packed` tells whether it ever was.
    """

    container_number: str
    title: str
    location: str
    inside: str
    outermost: str
    is_packed: bool


@dataclass(frozen=True, slots=True)
class _Row:
    container_number: str
    title: str
    location: str
    inside: str
    revision: int
    keys: tuple[str, str]


def load_walk(connection: Connection) -> tuple[Stand, ...]:
    """Load every container in walking order; those without a location come last."""
    columns = (
        containers.c.container_number,
        containers.c.title,
        containers.c.location,
        containers.c.inside,
        containers.c.revision,
        containers.c.location_key,
        containers.c.sort_key,
    )
    rows = {
        number: _Row(number, title, location, inside, revision, (location_key, sort_key))
        for number, title, location, inside, revision, location_key, sort_key in connection.execute(
            select(*columns)
        )
    }
    paths = {number: _path_of(number, rows) for number in rows}
    ordered = sorted(rows, key=lambda number: [rows[one].keys for one in paths[number]])
    return tuple(_stand(rows[number], rows[paths[number][0]]) for number in ordered)


def load_filled(connection: Connection) -> frozenset[str]:
    """Name the containers in which something lies itself, not only in others inside them."""
    is_current = (packings.c.container_id == containers.c.id) & (
        packings.c.revision == containers.c.revision
    )
    query = (
        select(containers.c.container_number)
        .join(packings, is_current)
        .join(places, places.c.packing_id == packings.c.id)
    )
    return frozenset(connection.execute(query.distinct()).scalars())


def _path_of(number: str, rows: Mapping[str, _Row]) -> tuple[str, ...]:
    """Name the containers from the outermost to this one; a circle is cut where it closes."""
    path = [number]
    outer = rows[number].inside
    while outer in rows and outer not in path:
        path.append(outer)
        outer = rows[outer].inside
    return tuple(reversed(path))


def _stand(row: _Row, outermost: _Row) -> Stand:
    return Stand(
        row.container_number,
        row.title,
        outermost.location,
        row.inside,
        outermost.container_number,
        is_packed=row.revision > 0,
    )
