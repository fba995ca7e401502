"""Changes of what lies in a container, each made from the state that somebody has seen."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from service.contents.places import (
    Places,
    name_place,
    parts_taken,
    places_changed,
    places_kept,
)
from service.errors import NotFoundError
from service.records.record import PackingRecord, PlaceRecord
from service.sentence import Sentence
from service.store.handles import Connection
from service.store.history import Stamp
from service.store.packing.load import load_packing
from service.store.packing.save import save_packing
from service.store.packing.weighed import restore_weight


@dataclass(frozen=True, slots=True)
class Seen:
    """The container that is changed, the revision the packer has seen, and why it is changed."""

    container_number: str
    revision: int
    reason: str = ""


def put_in(
    connection: Connection, seen: Seen, place: PlaceRecord, *, stamp: Stamp
) -> PackingRecord:
    """Put an object, or named parts of it, into a container.

    Raises:
        NotFoundError: When there is no such container.
        PackingConflictError: When somebody has packed it meanwhile.
        PackedElsewhereError: When the object lies in another container: that would be a move.
    """
    return _repack(connection, seen, lambda places: (*places, place), stamp)


def take_out(
    connection: Connection,
    seen: Seen,
    object_number: str,
    *,
    parts: tuple[str, ...] = (),
    stamp: Stamp,
) -> PackingRecord:
    """Take an object, or named parts of it, out of a container for good.

    Whoever brings it back soon leaves a removal slip instead: then the cards stay true.

    Raises:
        NotFoundError: When there is no such container, or the object or part does not lie in it.
        PackingConflictError: When somebody has packed it meanwhile.
    """
    taken = PlaceRecord(object_number, parts)
    return _repack(connection, seen, lambda places: _without(seen, places, taken), stamp)


def place_anew(
    connection: Connection, seen: Seen, place: PlaceRecord, *, stamp: Stamp
) -> PackingRecord:
    """Give an object, or the same parts of it, another place in its container.

    Raises:
        NotFoundError: When there is no such container, or the object or parts do not lie in it.
        PackingConflictError: When somebody has packed it meanwhile.
    """
    return _repack(connection, seen, lambda places: _replaced(seen, places, place), stamp)


def lay_out(
    connection: Connection, seen: Seen, change: Callable[[Places], Places], *, stamp: Stamp
) -> PackingRecord:
    """Put what lies in a container into another order or other layers; nothing new is nothing done.

    Raises:
        NotFoundError: When there is no such container or revision.
        PackingConflictError: When somebody has packed it meanwhile.
    """
    was = load_packing(connection, seen.container_number, revision=seen.revision)
    if change(was.places) == was.places:
        return was
    return _repack(connection, seen, change, stamp)


def go_back(connection: Connection, seen: Seen, revision: int, *, stamp: Stamp) -> PackingRecord:
    """Pack a container as it was at an earlier revision: this becomes its next one.

    Where that undoes just the last packing, the measured weight that it took out comes back, too.

    Raises:
        NotFoundError: When there is no such container or revision.
        PackingConflictError: When somebody has packed it meanwhile.
        PackedElsewhereError: When something of it lies in another container by now.
    """
    then = load_packing(connection, seen.container_number, revision=revision)
    saved = _repack(connection, seen, lambda _: then.places, stamp)
    if seen.revision == revision + 1:
        restore_weight(connection, seen.container_number, revision=seen.revision, stamp=stamp)
    return saved


def _repack(
    connection: Connection, seen: Seen, change: Callable[[Places], Places], stamp: Stamp
) -> PackingRecord:
    """Change the state that was seen; whether it is still the current one is asked when saving."""
    was = load_packing(connection, seen.container_number, revision=seen.revision)
    wanted = replace(
        was,
        places=change(was.places),
        packed_by=stamp.actor,
        packed_on=stamp.at.date(),
        reason=seen.reason,
    )
    return save_packing(connection, wanted, expected_revision=seen.revision, stamp=stamp)


def _without(seen: Seen, places: Places, taken: PlaceRecord) -> Places:
    if parts_taken(places, taken) is None:
        raise NotFoundError(
            name_place(taken),
            what=Sentence("object in {container_number}", container_number=seen.container_number),
        )
    return places_kept(places, taken)


def _replaced(seen: Seen, places: Places, place: PlaceRecord) -> Places:
    changed = places_changed(places, place)
    if changed is None:
        raise NotFoundError(
            name_place(place),
            what=Sentence("object in {container_number}", container_number=seen.container_number),
        )
    return changed
