"""The yearly look at each container, noted; it makes no card wrong."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from sqlalchemy import Connection, func, insert, or_, select

from service.store.canonical import check_text, dump_json
from service.store.history import Entry, Stamp, begin_change, write_history
from service.store.packing.load import find_held
from service.store.tables import actors, checks, containers


@dataclass(frozen=True, slots=True)
class Check:
    """A container was looked at on a day, and what was seen; `stamp` says who noted it."""

    container_number: str
    checked_on: date
    note: str
    stamp: Stamp


@dataclass(frozen=True, slots=True)
class Due:
    """A container that is to be checked; `last_on` is None where it never was."""

    container_number: str
    title: str
    location: str
    last_on: date | None


def save_check(
    connection: Connection, container_number: str, checked_on: date, *, note: str, stamp: Stamp
) -> None:
    """Note that a container was checked.

    Raises:
        NotFoundError: When there is no such container.
    """
    change = begin_change(connection, stamp)
    held = find_held(connection, container_number)
    connection.execute(
        insert(checks).values(
            container_id=held.container_id,
            checked_on=checked_on,
            note=check_text(note),
            actor_id=change.actor_id,
            at=stamp.at,
        )
    )
    detail = dump_json({"checked_on": str(checked_on), "note": note})
    write_history(connection, change, [Entry("checked", container_number, detail=detail)])


def load_checks(connection: Connection, container_number: str) -> tuple[Check, ...]:
    """Load the checks of a container, the latest day first.

    Raises:
        NotFoundError: When there is no such container.
    """
    held = find_held(connection, container_number)
    query = (
        select(checks, actors.c.name)
        .join(actors, checks.c.actor_id == actors.c.id)
        .where(checks.c.container_id == held.container_id)
        .order_by(checks.c.checked_on.desc(), checks.c.id.desc())
    )
    return tuple(
        Check(container_number, row["checked_on"], row["note"], Stamp(row["name"], row["at"]))
        for row in connection.execute(query).mappings()
    )


def list_due(connection: Connection, *, before: date) -> tuple[Due, ...]:
    """List the packed containers last checked before a day, or never, in walking order."""
    last = func.max(checks.c.checked_on)
    query = (
        select(containers.c.container_number, containers.c.title, containers.c.location, last)
        .outerjoin(checks, checks.c.container_id == containers.c.id)
        .where(containers.c.revision > 0)
        .group_by(containers.c.id)
        .having(or_(last.is_(None), last < before))
        .order_by(containers.c.location_key, containers.c.sort_key)
    )
    return tuple(
        Due(number, title, location, day)
        for number, title, location, day in connection.execute(query)
    )
