"""Moves an object between containers: both get a revision, or neither."""

from __future__ import annotations

from dataclasses import dataclass, replace

from sqlalchemy import Connection

from service.errors import NotFoundError
from service.records.record import PackingRecord, PlaceRecord
from service.store.history import Stamp, begin_change
from service.store.packing.load import load_packing
from service.store.packing.occupancy import Places
from service.store.packing.save import save_changes


@dataclass(frozen=True, slots=True)
class Move:
    """An object, or the parts that `place` names, on its way to that place in another container.

    A place without parts takes all of the object that lies there. The revisions are those that
    whoever moves it has seen.
    """

    place: PlaceRecord
    from_container: str
    from_revision: int
    to_container: str
    to_revision: int
    reason: str = ""


def move_object(
    connection: Connection, move: Move, *, stamp: Stamp
) -> tuple[PackingRecord, PackingRecord]:
    """Move an object and give both new packings, the one it left first.

    Raises:
        NotFoundError: When a container is not there, or the object or part does not lie in it.
        PackingConflictError: When somebody has packed one of them meanwhile; nothing is changed.
        ValueError: When both containers are one: that is a packing of this container.
    """
    if move.from_container == move.to_container:
        message = f"{move.from_container} is both ends of the move."
        raise ValueError(message)
    change = begin_change(connection, stamp)
    left = load_packing(connection, move.from_container)
    right = load_packing(connection, move.to_container)
    put = replace(move.place, parts=_parts_taken(left, move.place))
    wanted = [
        (_repack(left, _places_kept(left, move.place), move, stamp), move.from_revision),
        (_repack(right, (*right.places, put), move, stamp), move.to_revision),
    ]
    first, second = save_changes(connection, change, wanted, verb="moved")
    return first, second


def _repack(packing: PackingRecord, places: Places, move: Move, stamp: Stamp) -> PackingRecord:
    return replace(
        packing,
        places=places,
        packed_by=stamp.actor,
        packed_on=stamp.at.date(),
        reason=move.reason,
    )


def _parts_taken(packing: PackingRecord, wanted: PlaceRecord) -> tuple[str, ...]:
    """Name the parts that go; none is the whole object.

    Raises:
        NotFoundError: When the object, or a part that is named, does not lie there.
    """
    number = wanted.object_number
    here = [place.parts for place in packing.places if place.object_number == number]
    named = tuple(part for parts in here for part in parts)
    if not here or not set(named).issuperset(wanted.parts):
        name = " ".join((number, *wanted.parts))
        raise NotFoundError(name, what=f"object in {packing.container_number}")
    if wanted.parts:
        return wanted.parts
    return named if all(here) else ()


def _places_kept(packing: PackingRecord, wanted: PlaceRecord) -> Places:
    kept = []
    for place in packing.places:
        if place.object_number != wanted.object_number:
            kept.append(place)
        elif wanted.parts and (rest := _without(place.parts, wanted.parts)) != place.parts:
            kept += [replace(place, parts=rest)] if rest else []
        elif wanted.parts:
            kept.append(place)
    return tuple(kept)


def _without(parts: tuple[str, ...], taken: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(part for part in parts if part not in taken)
