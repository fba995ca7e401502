"""Objects that are out of their containers against a removal slip; their cards stay true."""

from __future__ import annotations

import json
from dataclasses import dataclass, replace
from datetime import date, datetime

from sqlalchemy import Connection, Select, insert, select, update

from service.contents.places import parts_taken
from service.errors import NotFoundError
from service.records.record import PlaceRecord
from service.records.rows.text import tidy_text
from service.sentence import Sentence
from service.store.canonical import check_text, dump_json
from service.store.history import Entry, Stamp, begin_change, write_history
from service.store.packing.load import find_held, load_packing
from service.store.tables import actors, containers, outs


@dataclass(frozen=True, slots=True)
class Slip:
    """A removal slip: which object, or which parts of it, go from where to whom, and why."""

    object_number: str
    container_number: str
    parts: tuple[str, ...] = ()
    to_whom: str = ""
    reason: str = ""
    due_back: date | None = None


@dataclass(frozen=True, slots=True)
class Out:
    """A slip in use: its number, who took the object out and when, and when it came back."""

    out_id: int
    slip: Slip
    stamp: Stamp
    back_at: datetime | None = None

    @property
    def is_out(self) -> bool:
        """Tell whether the object has not come back yet."""
        return self.back_at is None


def note_out(connection: Connection, slip: Slip, *, stamp: Stamp) -> Out:
    """Note that an object, or named parts of it, was taken out and is to come back.

    Raises:
        NotFoundError: When there is no such container, or the object or part does not lie in it.
    """
    change = begin_change(connection, stamp)
    held = find_held(connection, slip.container_number)
    lying = load_packing(connection, slip.container_number).places
    parts = parts_taken(lying, PlaceRecord(slip.object_number, slip.parts))
    if parts is None:
        raise NotFoundError(
            slip.object_number,
            what=Sentence("object in {container_number}", container_number=slip.container_number),
        )
    slip = replace(slip, to_whom=tidy_text(slip.to_whom), reason=tidy_text(slip.reason))
    values = {
        "object_number": slip.object_number,
        "parts": dump_json(list(slip.parts)),
        "container_id": held.container_id,
        "to_whom": check_text(slip.to_whom),
        "reason": check_text(slip.reason),
        "due_back": slip.due_back,
        "actor_id": change.actor_id,
        "out_at": stamp.at,
    }
    key = connection.execute(insert(outs).values(values).returning(outs.c.id)).scalar_one()
    write_history(connection, change, [_tell("taken out against a slip", slip)])
    return Out(int(key), slip, stamp)


def note_back(connection: Connection, out_id: int, *, stamp: Stamp) -> Out:
    """Note that an object is back in its container; one that is back already stays so.

    Raises:
        NotFoundError: When there is no such slip.
    """
    change = begin_change(connection, stamp)
    found = load_out(connection, out_id)
    if not found.is_out:
        return found
    connection.execute(update(outs).where(outs.c.id == out_id).values(back_at=stamp.at))
    write_history(connection, change, [_tell("brought back", found.slip)])
    return load_out(connection, out_id)


def load_out(connection: Connection, out_id: int) -> Out:
    """Load one slip.

    Raises:
        NotFoundError: When there is none of that number.
    """
    for found in _read(connection, _query().where(outs.c.id == out_id)):
        return found
    raise NotFoundError(str(out_id), what="removal slip")


def load_outs(
    connection: Connection, *, container_number: str = "", object_number: str = ""
) -> tuple[Out, ...]:
    """Load the slips of what is out now: of a container, of an object, or all, oldest first."""
    query = _query().where(outs.c.back_at.is_(None))
    if container_number:
        query = query.where(containers.c.container_number == container_number)
    if object_number:
        query = query.where(outs.c.object_number == object_number)
    return _read(connection, query)


def load_overdue(connection: Connection, day: date) -> tuple[Out, ...]:
    """Load the slips of what should have been back before a day."""
    return _read(connection, _query().where(outs.c.back_at.is_(None), outs.c.due_back < day))


def _tell(verb: str, slip: Slip) -> Entry:
    said = {"to": slip.to_whom, "reason": slip.reason, "parts": list(slip.parts)}
    detail = dump_json({name: value for name, value in said.items() if value})
    return Entry(verb, slip.container_number, slip.object_number, detail=detail)


def _query() -> Select[tuple[object, ...]]:
    return (
        select(outs, containers.c.container_number, actors.c.name)
        .join(containers, outs.c.container_id == containers.c.id)
        .join(actors, outs.c.actor_id == actors.c.id)
        .order_by(outs.c.id)
    )


def _read(connection: Connection, query: Select[tuple[object, ...]]) -> tuple[Out, ...]:
    return tuple(
        Out(
            row["id"],
            Slip(
                row["object_number"],
                row["container_number"],
                tuple(json.loads(row["parts"])),
                row["to_whom"],
                row["reason"],
                row["due_back"],
            ),
            Stamp(row["name"], row["out_at"]),
            row["back_at"],
        )
        for row in connection.execute(query).mappings()
    )
