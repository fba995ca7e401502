"""How what an import touches was before and is after, kept so that it can be taken back.

Of the former state the whole text is kept, of the state that was made its hash alone: enough to
tell whether somebody has changed it since.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from sqlalchemy import Connection, insert, select

from service.records.record import PackingRecord
from service.store.base.bulk import execute_rows, in_portions
from service.store.canonical import encode_record
from service.store.kept.intake_tables import import_states
from service.store.packing.load import load_current
from service.store.packing.take_in import PackingsPlan
from service.store.plan_records import CONTAINERS, OBJECTS, Kind, KindPlan, Record, RecordsPlan
from service.store.tables import museum


class StateKind(StrEnum):
    """What a state is of."""

    MUSEUM = "museum"
    OBJECT = "object"
    CONTAINER = "container"
    PACKING = "packing"


@dataclass(frozen=True, slots=True)
class State:
    """How something is: its record as canonical JSON, and its source row; None where it is not."""

    text: str | None = None
    source: str = ""

    @property
    def sha256(self) -> str:
        """What tells it from any other state; empty where nothing is there."""
        if self.text is None:
            return ""
        return hashlib.sha256(f"{self.text}\n{self.source}".encode()).hexdigest()


NOTHING = State()
Key = tuple[StateKind, str]


@dataclass(frozen=True, slots=True)
class ChangedState:
    """What one change did: of what, how it was, how it then was, and which packing it made."""

    kind: StateKind
    number: str
    before: State
    after_sha256: str
    revision: int | None = None

    @property
    def key(self) -> Key:
        """What it is of."""
        return (self.kind, self.number)


def states_of(plan: RecordsPlan) -> tuple[ChangedState, ...]:
    """Give what following a plan changes."""
    return (
        *_museum_states(plan),
        *_record_states(StateKind.OBJECT, plan.objects),
        *_record_states(StateKind.CONTAINER, plan.containers),
        *_packing_states(plan.packings),
    )


def packing_state(packing: PackingRecord | None) -> State:
    """Give the state of a packing; its number does not count, and a bare empty one is none."""
    if packing is None:
        return NOTHING
    bare = PackingRecord(packing.container_number)
    plain = replace(packing, revision=bare.revision)
    return NOTHING if plain == bare else State(encode_record(plain))


def save_states(connection: Connection, import_id: int, changed: Iterable[ChangedState]) -> None:
    """Keep what an import changed, in the transaction that changed it."""
    rows = [
        {
            "import_id": import_id,
            "kind": one.kind.value,
            "number": one.number,
            "before": one.before.text,
            "source": one.before.source,
            "after_sha256": one.after_sha256,
            "revision": one.revision,
        }
        for one in changed
    ]
    execute_rows(connection, insert(import_states), rows)


def load_states(connection: Connection, import_id: int) -> tuple[ChangedState, ...]:
    """Load what an import changed."""
    query = (
        select(import_states)
        .where(import_states.c.import_id == import_id)
        .order_by(import_states.c.kind, import_states.c.number)
    )
    return tuple(
        ChangedState(
            StateKind(row["kind"]),
            row["number"],
            State(row["before"], row["source"]),
            row["after_sha256"],
            row["revision"],
        )
        for row in connection.execute(query).mappings()
    )


def load_made_revisions(
    connection: Connection, container_numbers: Sequence[str]
) -> frozenset[tuple[str, int]]:
    """Name the packings of containers that imports have made, or the taking back of one."""
    found: set[tuple[str, int]] = set()
    for some in in_portions(container_numbers):
        query = select(import_states.c.number, import_states.c.revision).where(
            import_states.c.kind == StateKind.PACKING.value,
            import_states.c.number.in_(some),
            import_states.c.revision.is_not(None),
        )
        found.update((number, revision) for number, revision in connection.execute(query))
    return frozenset(found)


def load_present(connection: Connection, keys: Iterable[Key]) -> dict[Key, State]:
    """Load how things are now; what is not there is left out."""
    numbers: dict[StateKind, list[str]] = {kind: [] for kind in StateKind}
    for kind, number in keys:
        numbers[kind].append(number)
    packings = load_current(connection, numbers[StateKind.PACKING])
    found = {
        **_load_records(connection, StateKind.OBJECT, OBJECTS, numbers),
        **_load_records(connection, StateKind.CONTAINER, CONTAINERS, numbers),
        **{(StateKind.PACKING, of): packing_state(packing) for of, packing in packings.items()},
    }
    text = connection.execute(select(museum.c.record)).scalar()
    if text is not None:
        found[StateKind.MUSEUM, ""] = State(text)
    return found


def _load_records(
    connection: Connection,
    what: StateKind,
    kind: Kind[Record],
    numbers: Mapping[StateKind, Sequence[str]],
) -> dict[Key, State]:
    columns, found = kind.table.c, dict[Key, State]()
    for some in in_portions(numbers[what]):
        query = select(columns[kind.number], columns.record, columns.source).where(
            columns[kind.number].in_(some)
        )
        for number, text, source in connection.execute(query):
            found[what, number] = State(text, source)
    return found


def _museum_states(plan: RecordsPlan) -> Iterator[ChangedState]:
    if plan.museum.wanted is not None:
        after = State(plan.museum.wanted)
        yield ChangedState(StateKind.MUSEUM, "", State(plan.museum.stored), after.sha256)


def _record_states(what: StateKind, plan: KindPlan[Record]) -> Iterator[ChangedState]:
    for number in plan.outcome.touched:
        stored, row = plan.stored.get(number), plan.rows[number]
        before = NOTHING if stored is None else State(stored.record, stored.source)
        after = State(row["record"], row["source"])
        yield ChangedState(what, number, before, after.sha256)


def _packing_states(plan: PackingsPlan) -> Iterator[ChangedState]:
    for packing in plan.accepted:
        number = packing.container_number
        current = plan.current.get(number)
        yield ChangedState(
            StateKind.PACKING,
            number,
            packing_state(current),
            packing_state(packing).sha256,
            (current.revision if current else 0) + 1,
        )
