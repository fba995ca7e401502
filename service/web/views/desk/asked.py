"""What a reader of the print desk wants to print, as the address says it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from fastapi import Request

from service.store.handles import Connection
from service.store.lists.search import ContainerHit, ObjectHit, search
from service.store.load_records import load_containers, load_objects

MOST_CHOSEN = 1_000
_MOST_HITS = 30
_DIGITS = 10


class What(StrEnum):
    """What can be printed from the desk."""

    NOTHING = ""
    REPRINTS = "reprints"
    LACKING = "lacking"
    CONTAINERS = "containers"
    OBJECTS = "objects"
    CARD = "card"
    ALL = "all"


@dataclass(frozen=True, slots=True)
class Asked:
    """What is wanted: numbers that were chosen, words to search for, and numbers as typed."""

    what: What = What.NOTHING
    containers: tuple[str, ...] = ()
    objects: tuple[str, ...] = ()
    card: int = 0
    q: str = ""
    typed: str = ""


@dataclass(frozen=True, slots=True)
class Chosen:
    """A container or object that is chosen or was found, told with what one knows it by."""

    number: str
    title: str
    location: str = ""


@dataclass(frozen=True, slots=True)
class Choice:
    """What is chosen, what was found besides, and typed numbers that are not there."""

    chosen: tuple[Chosen, ...]
    found: tuple[Chosen, ...]
    unknown: tuple[str, ...]


def read_asked(request: Request) -> Asked:
    """Read the address; what cannot be understood shows the start of the desk."""
    asked = request.query_params
    containers = _numbers(asked.getlist("containers"))
    objects = _numbers(asked.getlist("objects"))
    number = asked.get("card", "")
    card = int(number) if number.isascii() and number.isdigit() and len(number) < _DIGITS else 0
    what = asked.get("what", "")
    meant = What(what) if what in set(What) else What.NOTHING
    if meant is What.NOTHING:
        meant = _guess(containers, objects, card)
    return Asked(meant, containers, objects, card, asked.get("q", ""), asked.get("typed", ""))


def choose_containers(connection: Connection, asked: Asked) -> Choice:
    """Load the containers that are chosen, and find others."""
    wanted = _wanted(asked.containers, asked.typed)
    known = {one.container_number: one for one in load_containers(connection, wanted)}
    chosen = tuple(
        Chosen(number, known[number].title, " / ".join(known[number].location))
        for number in wanted
        if number in known
    )
    hits = search(connection, asked.q, limit=_MOST_HITS).containers if asked.q.strip() else ()
    found = tuple(_found_container(hit) for hit in hits if hit.container_number not in known)
    return Choice(chosen, found, tuple(one for one in wanted if one not in known))


def choose_objects(connection: Connection, asked: Asked) -> Choice:
    """Load the objects that are chosen for tags, and find others."""
    wanted = _wanted(asked.objects, asked.typed)
    known = {one.object_number: one for one in load_objects(connection, wanted)}
    chosen = tuple(Chosen(number, known[number].title) for number in wanted if number in known)
    hits = search(connection, asked.q, limit=_MOST_HITS).objects if asked.q.strip() else ()
    found = tuple(_found_object(hit) for hit in hits if hit.object_number not in known)
    return Choice(chosen, found, tuple(one for one in wanted if one not in known))


def _numbers(values: Sequence[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(value for value in values if value))[:MOST_CHOSEN]


def _guess(containers: Sequence[str], objects: Sequence[str], card: int) -> What:
    if card:
        return What.CARD
    if containers:
        return What.CONTAINERS
    return What.OBJECTS if objects else What.NOTHING


def _wanted(chosen: Sequence[str], typed: str) -> list[str]:
    """Join what was ticked with what was typed, a number a line, each once."""
    lines = (line.strip() for line in typed.splitlines())
    return list(dict.fromkeys((*chosen, *(line for line in lines if line))))[:MOST_CHOSEN]


def _found_container(hit: ContainerHit) -> Chosen:
    return Chosen(hit.container_number, hit.title, hit.location)


def _found_object(hit: ObjectHit) -> Chosen:
    lies = ", ".join(one.container_number for one in hit.lies_in)
    return Chosen(hit.object_number, hit.title, lies)
