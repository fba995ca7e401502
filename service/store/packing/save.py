"""Saves packings: each change of a container's contents is its next revision, without a gap."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from sqlalchemy import Connection, bindparam, insert, select, update

from service.errors import PackedElsewhereError, PackingConflictError
from service.records.record import PackingRecord
from service.records.rows.text import tidy_text
from service.store.base.bulk import execute_rows, in_portions
from service.store.canonical import dump_json, encode_record
from service.store.history import Change, Entry, Stamp, begin_change, write_history
from service.store.packing.load import IS_CURRENT, load_held, load_holders, load_packing
from service.store.packing.occupancy import Places, find_clashes
from service.store.packing.weighed import forget_weights
from service.store.tables import containers, packings, places


def save_packing(
    connection: Connection, packing: PackingRecord, *, expected_revision: int, stamp: Stamp
) -> PackingRecord:
    """Save a container's new contents as revision `expected_revision` + 1 and give them back.

    `expected_revision` is the one the packer has seen, 0 where nothing was packed before; the
    revision that `packing` names is not looked at.

    Raises:
        NotFoundError: When there is no such container.
        PackingConflictError: When somebody has packed it meanwhile; nothing is changed.
        PackedElsewhereError: When an object lies in another container; nothing is changed.
    """
    change = begin_change(connection, stamp)
    (saved,) = save_changes(connection, change, [(packing, expected_revision)], verb="packed")
    return saved


def save_changes(
    connection: Connection,
    change: Change,
    wanted: Sequence[tuple[PackingRecord, int]],
    *,
    verb: str,
) -> list[PackingRecord]:
    """Save several packings, each with the revision it was made from: all of them or none.

    The measured weight of a container that holds other things now is taken out.

    Raises:
        NotFoundError: When one of the containers is not there.
        PackingConflictError: When somebody has packed one of them meanwhile.
        PackedElsewhereError: When an object would lie in two containers.
    """
    before = {
        packing.container_number: _refuse_stale(connection, packing, expected)
        for packing, expected in wanted
    }
    coming = {packing.container_number: packing.places for packing, _ in wanted}
    _refuse_elsewhere(connection, coming)
    saved = add_revisions(connection, change, [packing for packing, _ in wanted])
    entries = [tell_packing(verb, packing) for packing in saved]
    entries += forget_weights(connection, before, saved)
    write_history(connection, change, entries)
    return saved


def add_revisions(
    connection: Connection, change: Change, wanted: Sequence[PackingRecord]
) -> list[PackingRecord]:
    """Add packings, one a container, each as the next revision; all has been checked before."""
    numbers = [packing.container_number for packing in wanted]
    held = load_held(connection, numbers)
    saved = [
        replace(_tidy(packing), revision=held[packing.container_number].revision + 1)
        for packing in wanted
    ]
    rows = [
        {
            "container_id": held[packing.container_number].container_id,
            "revision": packing.revision,
            "record": encode_record(packing),
            "actor_id": change.actor_id,
            "at": change.stamp.at,
        }
        for packing in saved
    ]
    execute_rows(connection, insert(packings), rows)
    raise_revision = (
        update(containers)
        .where(containers.c.id == bindparam("container_id"))
        .values(revision=bindparam("new_revision"))
    )
    raised = [
        {"container_id": row["container_id"], "new_revision": row["revision"]} for row in rows
    ]
    execute_rows(connection, raise_revision, raised)
    _add_places(connection, saved)
    return saved


def tell_packing(verb: str, packing: PackingRecord, *, detail: str = "") -> Entry:
    """Say of a packing what the history keeps of it."""
    reason = dump_json({"reason": packing.reason}) if packing.reason else ""
    return Entry(
        verb,
        container_number=packing.container_number,
        revision=packing.revision,
        detail=detail or reason,
    )


def _tidy(packing: PackingRecord) -> PackingRecord:
    """Give a packing with what was typed of it cleaned as a table would be."""
    places = tuple(
        replace(place, compartment=tidy_text(place.compartment), note=tidy_text(place.note))
        for place in packing.places
    )
    return replace(packing, places=places, reason=tidy_text(packing.reason))


def _add_places(connection: Connection, saved: Sequence[PackingRecord]) -> None:
    """Add the places of packings that are current by now."""
    keys: dict[str, int] = {}
    for some in in_portions([packing.container_number for packing in saved]):
        query = (
            select(containers.c.container_number, packings.c.id)
            .join_from(containers, packings, IS_CURRENT)
            .where(containers.c.container_number.in_(some))
        )
        keys.update(dict(connection.execute(query).all()))
    rows = [
        {
            "packing_id": keys[packing.container_number],
            "position": position,
            "object_number": place.object_number,
            "parts": dump_json(list(place.parts)),
        }
        for packing in saved
        for position, place in enumerate(packing.places, 1)
    ]
    execute_rows(connection, insert(places), rows)


def _refuse_stale(connection: Connection, packing: PackingRecord, expected: int) -> PackingRecord:
    """Give the current packing, which must be the one that was seen.

    Raises:
        PackingConflictError: When somebody has packed it meanwhile.
    """
    current = load_packing(connection, packing.container_number)
    if current.revision != expected:
        raise PackingConflictError(
            packing.container_number,
            expected=expected,
            revision=current.revision,
            yours=encode_record(packing),
            current=encode_record(current) if current.revision else "",
        )
    return current


def _refuse_elsewhere(connection: Connection, coming: Mapping[str, Places]) -> None:
    numbers = (place.object_number for spots in coming.values() for place in spots)
    held = load_holders(connection, numbers)
    lying = {number: spots for number, spots in held.items() if number not in coming}
    for clash in find_clashes(lying, coming):
        raise PackedElsewhereError(
            clash.object_number, container_number=clash.container_number, lies_in=clash.lies_in
        )
