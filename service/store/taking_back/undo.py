"""Takes an import back as a change of its own, which can be taken back in turn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from sqlalchemy import Connection, delete, insert

from service.store.canonical import compare_json, dump_json
from service.store.history import Change, Entry, Stamp, begin_change, write_history
from service.store.kept.imports import note_import, note_undoes
from service.store.packing.load import load_held
from service.store.save_records import save_records
from service.store.tables import museum
from service.store.taking_back.plan import UndoPlan, plan_undo
from service.store.taking_back.remove import remove_containers, remove_objects
from service.store.taking_back.states import NOTHING, ChangedState, StateKind, save_states
from service.store.today.mark import MUSEUM_VERB

TAKEN_OUT = "taken out of the records"
TAKEN_BACK = "import taken back"


@dataclass(frozen=True, slots=True)
class Undone:
    """What came of taking an import back; `import_id` is None where nothing was left to do.

    Its number takes the taking back itself back.
    """

    import_id: int | None
    plan: UndoPlan


def undo_import(connection: Connection, import_id: int, *, stamp: Stamp) -> Undone:
    """Take an import back, as `plan_undo` plans it; a second time there is nothing to do.

    Raises:
        NotFoundError: When there is no such import.
    """
    begin_change(connection, stamp)
    plan = plan_undo(connection, import_id)
    if not plan.back and not plan.removed:
        return Undone(None, plan)
    collection = plan.collection
    held = load_held(connection, plan.numbers(StateKind.PACKING))
    packings = tuple(
        replace(one, revision=held[one.container_number].revision + 1)
        if one.container_number in held
        else one
        for one in collection.packings
    )
    save_records(connection, replace(collection, packings=packings), stamp=stamp)
    change = begin_change(connection, stamp)
    _take_out(connection, change, plan)
    of = plan.of
    number = note_import(
        connection,
        f"undo of import {of.import_id}",
        of.sha256,
        summarise_undo(plan),
        stamp=stamp,
    )
    note_undoes(connection, number, undoes=of.import_id)
    save_states(connection, number, _turned(connection, plan))
    return Undone(number, plan)


def summarise_undo(plan: UndoPlan) -> dict[str, int]:
    """Count what goes back, what goes, and what is left alone."""
    kinds = {
        "objects": StateKind.OBJECT,
        "containers": StateKind.CONTAINER,
        "packings": StateKind.PACKING,
    }
    changed = {f"{name} changed": len(plan.numbers(kind)) for name, kind in kinds.items()}
    removed = {
        f"{name} removed": len(plan.numbers(kind, removed=True))
        for name, kind in kinds.items()
        if kind is not StateKind.PACKING
    }
    own = len(plan.numbers(StateKind.MUSEUM))
    return {**changed, **removed, "museum": own, "left": plan.left}


def _take_out(connection: Connection, change: Change, plan: UndoPlan) -> None:
    """Put the museum back and take records out.

    The history comes first: what it marks to be worded anew is found by what is still there.
    """
    write_history(connection, change, _entries(plan))
    for one in plan.back:
        if one.kind is StateKind.MUSEUM:
            connection.execute(delete(museum))
            if one.before.text is not None:
                connection.execute(insert(museum).values(id=1, record=one.before.text))
    remove_objects(connection, plan.numbers(StateKind.OBJECT, removed=True))
    remove_containers(connection, plan.numbers(StateKind.CONTAINER, removed=True))


def _entries(plan: UndoPlan) -> Iterator[Entry]:
    yield Entry(TAKEN_BACK, detail=dump_json({"import": plan.of.import_id}))
    for one in plan.back:
        if one.kind is StateKind.MUSEUM:
            yield Entry(MUSEUM_VERB, detail=dump_json(_difference(plan, one)))
    for one in plan.removed:
        detail = dump_json({"record": _difference(plan, one)})
        if one.kind is StateKind.OBJECT:
            yield Entry(TAKEN_OUT, object_number=one.number, detail=detail)
        else:
            yield Entry(TAKEN_OUT, container_number=one.number, detail=detail)


def _difference(plan: UndoPlan, one: ChangedState) -> dict[str, dict[str, object]]:
    now = plan.present.get(one.key, NOTHING)
    return compare_json(now.text or "{}", one.before.text or "{}")


def _turned(connection: Connection, plan: UndoPlan) -> Iterator[ChangedState]:
    """Say what was done the other way round: how it was before this, and how it is now."""
    held = load_held(connection, plan.numbers(StateKind.PACKING))
    for one in (*plan.back, *plan.removed):
        before = plan.present.get(one.key, NOTHING)
        revision = held[one.number].revision if one.kind is StateKind.PACKING else None
        yield ChangedState(one.kind, one.number, before, one.before.sha256, revision)
