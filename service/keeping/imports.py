"""Taking a catalogue export in: first what it would change, then the change itself."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from service.records.record import Collection
from service.store.handles import Connection, Engine
from service.store.history import Stamp
from service.store.kept.imports import note_import
from service.store.open import reading, writing
from service.store.plan_records import RecordsPlan, plan_records
from service.store.save_records import Saved, save_records
from service.store.taking_back.states import save_states

AlsoSave = Callable[[Connection, "TakenIn"], None]
"""Called inside the transaction that takes a file in."""


@dataclass(frozen=True, slots=True)
class SourceFile:
    """The file records were read from: its name, and the SHA-256 of its bytes."""

    name: str
    sha256: str


@dataclass(frozen=True, slots=True)
class TakenIn:
    """A file that was taken in: the number of the import, and what came of each record."""

    import_id: int
    saved: Saved


def save_nothing_more(_connection: Connection, _taken: TakenIn) -> None:
    """Stand in where nothing else belongs to the import."""


def preview_import(engine: Engine, collection: Collection) -> RecordsPlan:
    """Say what taking these records in would do, without doing it.

    Raises:
        UnstorableTextError: When a text cannot be stored.
    """
    with reading(engine) as connection:
        return plan_records(connection, collection)


def apply_import(
    engine: Engine,
    source: SourceFile,
    collection: Collection,
    *,
    stamp: Stamp,
    also_save: AlsoSave = save_nothing_more,
) -> TakenIn:
    """Take records in, all of them or none, and note the file they came from.

    What somebody else changed since the preview is compared anew: the answer says what was done.

    Raises:
        UnstorableTextError: When a text cannot be stored; nothing is changed.
        StoreBusyError: When others kept the store locked for too long.
    """
    with writing(engine) as connection:
        saved = save_records(connection, collection, stamp=stamp)
        number = note_import(connection, source.name, source.sha256, summarise(saved), stamp=stamp)
        save_states(connection, number, saved.states)
        taken = TakenIn(number, saved)
        also_save(connection, taken)
    return taken


def summarise(saved: Saved) -> dict[str, int]:
    """Count what was new, changed, unchanged and refused, kind by kind."""
    kinds = {
        "objects": saved.objects,
        "containers": saved.containers,
        "packings": saved.packings,
    }
    counts = {
        f"{kind} {what}": len(getattr(outcome, what))
        for kind, outcome in kinds.items()
        for what in ("new", "changed", "unchanged")
    }
    return {**counts, "refused": len(saved.findings), "museum": int(saved.museum_changed)}
