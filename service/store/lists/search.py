"""Finds objects and containers by what people remember of them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from service.store.base.bulk import in_portions
from service.store.kept.outs import load_outs
from service.store.lists.index import CONTAINER_WORDS, OBJECT_WORDS, query_keys
from service.store.lists.words import split_words
from service.store.packing.load import load_holders
from service.store.tables import containers, objects

MOST_HITS = 200
_CONTAINERS = select(containers.c.container_number, containers.c.title, containers.c.location)


@dataclass(frozen=True, slots=True)
class LyingIn:
    """A container in which an object, or the parts that are named, lies."""

    container_number: str
    location: str
    parts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ObjectHit:
    """An object that was found, where it lies, and since when it is out of there."""

    object_number: str
    title: str
    lies_in: tuple[LyingIn, ...]
    out_since: datetime | None = None


@dataclass(frozen=True, slots=True)
class ContainerHit:
    """A container that was found."""

    container_number: str
    title: str
    location: str


@dataclass(frozen=True, slots=True)
class Found:
    """What was found, in natural order; `more` tells that there is more than is given."""

    objects: tuple[ObjectHit, ...]
    containers: tuple[ContainerHit, ...]
    more: bool = False


def search(connection: Connection, asked: str, *, limit: int = MOST_HITS) -> Found:
    """Find what holds words that begin with those asked for: numbers, titles, materials, places.

    An object in a container whose number is asked for is not found by it: that container is.
    """
    wanted = split_words(asked)
    found_objects = _find_objects(connection, wanted, limit + 1)
    found_containers = _find_containers(connection, wanted, limit + 1)
    more = max(len(found_objects), len(found_containers)) > limit
    hits = _locate(connection, found_objects[:limit])
    return Found(hits, tuple(found_containers[:limit]), more)


def _find_objects(
    connection: Connection, wanted: Sequence[str], limit: int
) -> list[tuple[str, str]]:
    if not wanted:
        return []
    query = (
        select(objects.c.object_number, objects.c.title)
        .where(objects.c.id.in_(query_keys(connection, OBJECT_WORDS, wanted)))
        .order_by(objects.c.sort_key, objects.c.object_number)
        .limit(limit)
    )
    return [(number, title) for number, title in connection.execute(query)]


def _find_containers(
    connection: Connection, wanted: Sequence[str], limit: int
) -> list[ContainerHit]:
    if not wanted:
        return []
    query = (
        _CONTAINERS.where(containers.c.id.in_(query_keys(connection, CONTAINER_WORDS, wanted)))
        .order_by(containers.c.sort_key, containers.c.container_number)
        .limit(limit)
    )
    return [ContainerHit(*row) for row in connection.execute(query)]


def _locate(connection: Connection, found: Sequence[tuple[str, str]]) -> tuple[ObjectHit, ...]:
    """Say of each object where it lies, and whether it is out."""
    holders = load_holders(connection, (number for number, _ in found))
    locations = {hit.container_number: hit.location for hit in _by_number(connection, holders)}
    lying: dict[str, list[LyingIn]] = defaultdict(list)
    for container, places in holders.items():
        for place in places:
            where = LyingIn(container, locations[container], place.parts)
            lying[place.object_number].append(where)
    out = {one.slip.object_number: one.stamp.at for one in load_outs(connection)} if found else {}
    return tuple(
        ObjectHit(number, title, tuple(lying[number]), out.get(number)) for number, title in found
    )


def _by_number(connection: Connection, numbers: Iterable[str]) -> list[ContainerHit]:
    return [
        ContainerHit(*row)
        for some in in_portions(sorted(numbers))
        for row in connection.execute(_CONTAINERS.where(containers.c.container_number.in_(some)))
    ]
