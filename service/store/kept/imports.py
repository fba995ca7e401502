"""Which files were taken in, by whom, and what they changed."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, insert, select

from service.store.canonical import check_text, dump_json
from service.store.history import Stamp, find_actor
from service.store.tables import actors, imports


@dataclass(frozen=True, slots=True)
class Import:
    """A file that was taken in: its SHA-256, and how many records were new, changed, refused."""

    import_id: int
    name: str
    sha256: str
    summary: Mapping[str, int]
    stamp: Stamp


def note_import(
    connection: Connection, name: str, sha256: str, summary: Mapping[str, int], *, stamp: Stamp
) -> int:
    """Note a file that was taken in, in the transaction that took it in, and give its number."""
    made = insert(imports).values(
        at=stamp.at,
        actor_id=find_actor(connection, stamp.actor),
        name=check_text(name),
        sha256=sha256,
        summary=dump_json(dict(summary)),
    )
    return int(connection.execute(made.returning(imports.c.id)).scalar_one())


def list_imports(connection: Connection, *, limit: int = 100) -> tuple[Import, ...]:
    """List the files that were taken in, the latest first."""
    query = (
        select(imports, actors.c.name.label("actor"))
        .join(actors, imports.c.actor_id == actors.c.id)
        .order_by(imports.c.id.desc())
        .limit(limit)
    )
    return tuple(
        Import(
            row["id"],
            row["name"],
            row["sha256"],
            json.loads(row["summary"]),
            Stamp(row["actor"], row["at"]),
        )
        for row in connection.execute(query).mappings()
    )
