"""Moves an object between containers: both get a revision, or neither."""

from __future__ import annotations

from dataclasses import dataclass, replace

from sqlalchemy import Connection

from service.contents.places import Places, name_place, parts_taken, places_kept
from service.errors import NotFoundError
from service.records.record import PackingRecord, PlaceRecord
from service.sentence import Sentence
from service.store.history import Stamp, begin_change
from service.store.packing.load import load_packing
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
        message = Sentence(
            "{from_container} is both ends of the move.", from_container=move.from_container
        )
        raise ValueError(message)
    change = begin_change(connection, stamp)
    left = load_packing(connection, move.from_container)
    right = load_packing(connection, move.to_container)
    parts = parts_taken(left.places, move.place)
    if parts is None:
        raise NotFoundError(
            name_place(move.place),
            what=Sentence("object in {from_container}", from_container=move.from_container),
        )
    put = replace(move.place, parts=parts)
    wanted = [
        (_repack(left, places_kept(left.places, move.place), move, stamp), move.from_revision),
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
