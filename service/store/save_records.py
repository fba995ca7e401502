"""Saves a collection so that saving it again changes nothing, and says what came of each record."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, bindparam, insert, update

from service.findings import Finding
from service.records.record import Collection
from service.store.base.bulk import execute_rows, load_keys
from service.store.canonical import compare_json, dump_json
from service.store.history import Entry, Stamp, begin_change, write_history
from service.store.lists.index import CONTAINER_WORDS, OBJECT_WORDS, keep_words
from service.store.lists.words import words_of_container, words_of_object
from service.store.packing.take_in import Outcome, take_in_packings
from service.store.plan_records import KindPlan, MuseumPlan, Record, RecordsPlan, plan_records
from service.store.shelf.photos import save_photos
from service.store.tables import containers, museum, objects
from service.store.taking_back.states import ChangedState, states_of


@dataclass(frozen=True, slots=True)
class Saved:
    """What came of a collection: numbers by what was done with them, and what was refused.

    `states` say how everything that was changed was before.
    """

    objects: Outcome
    containers: Outcome
    packings: Outcome
    museum_changed: bool
    findings: tuple[Finding, ...]
    states: tuple[ChangedState, ...] = ()


def save_records(connection: Connection, collection: Collection, *, stamp: Stamp) -> Saved:
    """Save museum, objects, containers and packings, as `plan_records` plans it.

    A packing becomes the store's next revision where it differs from the current one.

    Raises:
        UnstorableTextError: When a text cannot be stored; nothing is saved.
    """
    change = begin_change(connection, stamp)
    plan = plan_records(connection, collection)
    entries = [
        *_save_museum(connection, plan.museum),
        *_save_kind(connection, plan.objects),
        *_save_kind(connection, plan.containers),
    ]
    save_photos(connection, [plan.objects.records[n] for n in plan.objects.outcome.touched])
    _keep_words(connection, plan)
    entries += take_in_packings(connection, change, plan.packings)
    write_history(connection, change, entries)
    return Saved(
        plan.objects.outcome,
        plan.containers.outcome,
        plan.packings.outcome,
        plan.museum.wanted is not None,
        plan.findings,
        states_of(plan),
    )


def _keep_words(connection: Connection, plan: RecordsPlan) -> None:
    """Index what is new or changed."""
    named, known = plan.objects.records, plan.containers.records
    keys = load_keys(connection, objects, "object_number", plan.objects.outcome.touched)
    words = {key: words_of_object(named[number]) for number, key in keys.items()}
    keep_words(connection, OBJECT_WORDS, words)
    keys = load_keys(connection, containers, "container_number", plan.containers.outcome.touched)
    words = {key: words_of_container(known[number]) for number, key in keys.items()}
    keep_words(connection, CONTAINER_WORDS, words)


def _save_museum(connection: Connection, plan: MuseumPlan) -> list[Entry]:
    if plan.wanted is None:
        return []
    if plan.stored is None:
        connection.execute(insert(museum).values(id=1, record=plan.wanted))
    else:
        connection.execute(update(museum).values(record=plan.wanted))
    difference = compare_json(plan.stored or "{}", plan.wanted)
    return [Entry("museum changed", detail=dump_json(difference))]


def _save_kind(connection: Connection, plan: KindPlan[Record]) -> list[Entry]:
    outcome: Outcome = plan.outcome
    new_rows = [plan.rows[number] for number in outcome.new]
    execute_rows(connection, insert(plan.kind.table), new_rows)
    changed_rows = [
        {**plan.rows[number], "key": plan.stored[number].key} for number in outcome.changed
    ]
    _update(connection, plan, changed_rows)
    return [
        *(_tell(plan, "recorded", number) for number in outcome.new),
        *(
            _tell(plan, "changed", number, detail=dump_json(plan.difference(number)))
            for number in outcome.changed
        ),
    ]


def _update(
    connection: Connection, plan: KindPlan[Record], rows: Sequence[Mapping[str, object]]
) -> None:
    if rows:
        names = [name for name in rows[0] if name != "key"]
        statement = update(plan.kind.table).where(plan.kind.table.c.id == bindparam("key"))
        execute_rows(connection, statement.values({n: bindparam(n) for n in names}), rows)


def _tell(plan: KindPlan[Record], verb: str, number: str, *, detail: str = "") -> Entry:
    if plan.kind.number == "object_number":
        return Entry(verb, object_number=number, detail=detail)
    return Entry(verb, container_number=number, detail=detail)
