"""A container as somebody of the house stands before it: what to know, see, and look for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from service.cards.compose.objects import choose_photo, locate_objects, name_object
from service.cards.compose.warn import is_restricted, warn_outside
from service.cards.parts import Handling
from service.cards.words import KIND_WORDS, write_questions
from service.contents.packing import Packing
from service.errors import NotFoundError
from service.handling.checks.due import DueCheck, plan_checks
from service.keeping.rounds.loading import load_packings
from service.records.record import PhotoRole
from service.store.handles import Connection
from service.store.kept.checks import Check, load_checks, load_done
from service.store.kept.outs import Out, load_outs
from service.store.lists.walk import Stand, load_walk


@dataclass(frozen=True, slots=True)
class Seen:
    """An object to look at: `photo` is the SHA-256 of a stored file, "" where there is none."""

    object_number: str
    title: str
    place: str
    photo: str


@dataclass(frozen=True, slots=True)
class Look:
    """A container to look into: what it holds, what hurts, what is looked for, what was found.

    `plan` has every kind of check that is made of it, due or not; `past` the latest day first.
    """

    stand: Stand
    title: str
    seen: tuple[Seen, ...]
    handling: Handling
    questions: str
    plan: tuple[DueCheck, ...]
    past: tuple[Check, ...]
    outs: tuple[Out, ...]


def load_look(connection: Connection, container_number: str) -> Look:
    """Load a container to look into.

    Raises:
        NotFoundError: When there is none of this number.
    """
    stands = {stand.container_number: stand for stand in load_walk(connection)}
    if container_number not in stands:
        raise NotFoundError(container_number, what="container")
    loaded = load_packings(connection, [container_number])
    packing = loaded.packings[container_number]
    container, museum = packing.container, loaded.museum
    done = load_done(connection, [container_number]).get(container_number, ())
    files = {name: photo.sha256 for name, photo in loaded.photos.items()}
    return Look(
        stand=stands[container_number],
        title=container.title or KIND_WORDS[container.kind],
        seen=tuple(_see(packing, files)),
        handling=warn_outside(packing, museum),
        questions=write_questions(container.questions, museum.questions),
        plan=plan_checks(packing, done, museum.checks),
        past=load_checks(connection, container_number),
        outs=tuple(
            out for out in load_outs(connection) if out.slip.container_number == container_number
        ),
    )


def _see(packing: Packing, files: dict[str, str]) -> Iterator[Seen]:
    """Name what lies in a container, what nobody may picture without its photo."""
    for packed, place in locate_objects(packing):
        photo = "" if is_restricted(packed) else choose_photo(packed, PhotoRole.FRONT)
        yield Seen(packed.record.object_number, name_object(packed), place, files.get(photo, ""))
