"""The mappings by which the tables of this museum are read, each with a name, who and when."""

from __future__ import annotations

import json
from dataclasses import dataclass

from sqlalchemy import Connection, delete, insert, select, update

from service.errors import NotFoundError
from service.records.mapping.check import refuse_unusable
from service.records.mapping.choose import Mappings
from service.records.mapping.document import mapping_data, read_mapping
from service.records.mapping.mapping import ColumnMapping
from service.store.canonical import check_text, dump_json
from service.store.history import Entry, Stamp, begin_change, find_actor, write_history
from service.store.kept.intake_tables import mappings
from service.store.tables import actors


@dataclass(frozen=True, slots=True)
class SavedMapping:
    """A mapping with its name, and who saved it last and when."""

    name: str
    mapping: ColumnMapping
    stamp: Stamp


def save_mapping(
    connection: Connection, name: str, mapping: ColumnMapping, *, stamp: Stamp
) -> bool:
    """Save a mapping under a name, in the place of the one before; tell whether that changes any.

    Raises:
        UnusableMappingError: When no table can be read by it.
        UnstorableTextError: When a text cannot be stored.
    """
    refuse_unusable(name, mapping)
    change = begin_change(connection, stamp)
    text = dump_json(mapping_data(mapping))
    before = connection.execute(
        select(mappings.c.mapping).where(mappings.c.name == name)
    ).scalar_one_or_none()
    if before == text:
        return False
    values = {"mapping": text, "actor_id": find_actor(connection, stamp.actor), "at": stamp.at}
    if before is None:
        connection.execute(insert(mappings).values(name=check_text(name), **values))
    else:
        connection.execute(update(mappings).where(mappings.c.name == name).values(values))
    write_history(connection, change, [Entry("mapping saved", detail=dump_json({"name": name}))])
    return True


def load_mapping(connection: Connection, name: str) -> SavedMapping:
    """Load one mapping.

    Raises:
        NotFoundError: When there is none of that name.
    """
    for found in list_mappings(connection):
        if found.name == name:
            return found
    raise NotFoundError(name, what="mapping")


def list_mappings(connection: Connection) -> tuple[SavedMapping, ...]:
    """List the mappings that are saved, the latest first."""
    query = (
        select(mappings.c.name, mappings.c.mapping, mappings.c.at, actors.c.name.label("actor"))
        .join(actors, mappings.c.actor_id == actors.c.id)
        .order_by(mappings.c.at.desc(), mappings.c.name)
    )
    return tuple(
        SavedMapping(row.name, read_mapping(json.loads(row.mapping))[0], Stamp(row.actor, row.at))
        for row in connection.execute(query)
    )


def load_mappings(connection: Connection, *, wanted: str = "") -> Mappings:
    """Load what a reader needs: every mapping, and the one that is asked for.

    Raises:
        NotFoundError: When there is none of that name.
    """
    if wanted:
        load_mapping(connection, wanted)
    return Mappings({one.name: one.mapping for one in list_mappings(connection)}, wanted)


def forget_mapping(connection: Connection, name: str, *, stamp: Stamp) -> None:
    """Take a mapping away; what was read by it stays.

    Raises:
        NotFoundError: When there is none of that name.
    """
    change = begin_change(connection, stamp)
    load_mapping(connection, name)
    connection.execute(delete(mappings).where(mappings.c.name == name))
    told = Entry("mapping forgotten", detail=dump_json({"name": name}))
    write_history(connection, change, [told])
