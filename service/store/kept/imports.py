"""Which files were taken in, by whom, and what they changed."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, Select, insert, select, update

from service.errors import NotFoundError
from service.store.canonical import check_text, dump_json
from service.store.history import Stamp, find_actor
from service.store.tables import actors, imports


@dataclass(frozen=True, slots=True)
class Import:
    """A file that was taken in: its SHA-256, and how many records were new, changed, refused.

    One that `undoes` another took that back; `undone_by` names those that took this one back.
    """

    import_id: int
    name: str
    sha256: str
    summary: Mapping[str, int]
    stamp: Stamp
    undoes: int | None = None
    undone_by: tuple[int, ...] = ()


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


def note_undoes(connection: Connection, import_id: int, *, undoes: int) -> None:
    """Note that an import took another one back."""
    connection.execute(update(imports).where(imports.c.id == import_id).values(undoes=undoes))


def list_imports(connection: Connection, *, limit: int = 100) -> tuple[Import, ...]:
    """List the files that were taken in, the latest first."""
    return _read(connection, _query().order_by(imports.c.id.desc()).limit(limit))


def load_import(connection: Connection, import_id: int) -> Import:
    """Load one import.

    Raises:
        NotFoundError: When there is none of that number.
    """
    for found in _read(connection, _query().where(imports.c.id == import_id)):
        return found
    raise NotFoundError(str(import_id), what="import")


def _query() -> Select[tuple[object, ...]]:
    return select(imports, actors.c.name.label("actor")).join(
        actors, imports.c.actor_id == actors.c.id
    )


def _read(connection: Connection, query: Select[tuple[object, ...]]) -> tuple[Import, ...]:
    rows = connection.execute(query).mappings().all()
    undone: dict[int, list[int]] = {}
    taken_back = select(imports.c.undoes, imports.c.id).where(imports.c.undoes.is_not(None))
    for undoes, import_id in connection.execute(taken_back.order_by(imports.c.id)):
        undone.setdefault(undoes, []).append(import_id)
    return tuple(
        Import(
            row["id"],
            row["name"],
            row["sha256"],
            json.loads(row["summary"]),
            Stamp(row["actor"], row["at"]),
            row["undoes"],
            tuple(undone.get(row["id"], ())),
        )
        for row in rows
    )
