"""The round, noted: who looked at a container and what each look gave. It makes no card wrong."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta

from sqlalchemy import Connection, Select, delete, func, insert, select

from service.errors import DayAheadError, NotFoundError
from service.handling.checks.due import DoneCheck
from service.handling.checks.kinds import LOOKED_AT, CheckKind, CheckResult
from service.store.base.bulk import execute_rows, in_portions
from service.store.canonical import check_text, dump_json
from service.store.history import Entry, Stamp, begin_change, write_history
from service.store.kept.check_tables import check_results, checks
from service.store.packing.load import find_held
from service.store.tables import actors, containers


@dataclass(frozen=True, slots=True)
class Looked:
    """What a look for one kind of thing gave."""

    kind: CheckKind
    result: CheckResult
    note: str = ""


IN_ORDER = tuple(Looked(kind, CheckResult.OK) for kind in LOOKED_AT)
"""Looked at, nothing found; what has to be weighed is not among it."""


@dataclass(frozen=True, slots=True)
class Check:
    """A container was looked at on a day, and what each look gave; `stamp` says who noted it.

    One noted before there were results has none. `key` is what it is taken back by, 0 until the
    store has it.
    """

    container_number: str
    checked_on: date
    note: str
    stamp: Stamp
    results: tuple[Looked, ...] = ()
    key: int = field(default=0, compare=False)

    def found(self, kind: CheckKind) -> bool:
        """Tell whether something of a kind was found."""
        return any(one.kind is kind and one.result is CheckResult.FOUND for one in self.results)


def save_check(connection: Connection, check: Check) -> int:
    """Note that a container was checked, and give its key.

    Raises:
        NotFoundError: When there is no such container.
        DayAheadError: When its day has come nowhere yet; it would hide what is due until then.
    """
    # Somewhere it is tomorrow already.
    if check.checked_on > check.stamp.at.date() + timedelta(days=1):
        raise DayAheadError(check.container_number, day=check.checked_on)
    change = begin_change(connection, check.stamp)
    held = find_held(connection, check.container_number)
    made = insert(checks).values(
        container_id=held.container_id,
        checked_on=check.checked_on,
        note=check_text(check.note),
        actor_id=change.actor_id,
        at=check.stamp.at,
    )
    key = connection.execute(made.returning(checks.c.id)).scalar_one()
    rows = [
        {"check_id": key, "kind": one.kind, "result": one.result, "note": check_text(one.note)}
        for one in check.results
    ]
    execute_rows(connection, insert(check_results), rows)
    entry = Entry("checked", check.container_number, detail=_tell(check))
    write_history(connection, change, [entry])
    return int(key)


def take_back_check(
    connection: Connection, container_number: str, key: int, *, stamp: Stamp
) -> None:
    """Take back a check that was noted by mistake; the history keeps both.

    Raises:
        NotFoundError: When the container has no such check.
    """
    change = begin_change(connection, stamp)
    held = find_held(connection, container_number)
    wanted = (checks.c.id == key, checks.c.container_id == held.container_id)
    day = connection.execute(select(checks.c.checked_on).where(*wanted)).scalar_one_or_none()
    if day is None:
        raise NotFoundError(container_number, what="check of container")
    connection.execute(delete(check_results).where(check_results.c.check_id == key))
    connection.execute(delete(checks).where(*wanted))
    detail = dump_json({"checked_on": str(day)})
    write_history(connection, change, [Entry("check taken back", container_number, detail=detail)])


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
    results = _load_results(connection, held.container_id)
    return tuple(
        Check(
            container_number,
            row["checked_on"],
            row["note"],
            Stamp(row["name"], row["at"]),
            results.get(row["id"], ()),
            row["id"],
        )
        for row in connection.execute(query).mappings()
    )


def load_done(
    connection: Connection, container_numbers: Sequence[str] | None = None
) -> dict[str, tuple[DoneCheck, ...]]:
    """Load the latest look of each kind that was done, by container; of one day the last noted."""
    found: dict[str, tuple[DoneCheck, ...]] = {}
    query = _latest_query()
    column = query.selected_columns["container_number"]
    portions = [None] if container_numbers is None else in_portions(container_numbers)
    for some in portions:
        portion = query if some is None else query.where(column.in_(some))
        for row in connection.execute(portion).mappings():
            kind, result = CheckKind(row["kind"]), CheckResult(row["result"])
            number = row["container_number"]
            found[number] = (*found.get(number, ()), DoneCheck(kind, result, row["checked_on"]))
    return found


def _latest_query() -> Select[tuple[object, ...]]:
    rank = func.row_number().over(
        partition_by=(checks.c.container_id, check_results.c.kind),
        order_by=(checks.c.checked_on.desc(), checks.c.id.desc()),
    )
    ranked = (
        select(
            containers.c.container_number,
            check_results.c.kind,
            check_results.c.result,
            checks.c.checked_on,
            rank.label("rank"),
        )
        .join_from(check_results, checks, check_results.c.check_id == checks.c.id)
        .join(containers, checks.c.container_id == containers.c.id)
        .where(check_results.c.result != CheckResult.NOT_DONE.value)
        .subquery()
    )
    columns = (ranked.c.container_number, ranked.c.kind, ranked.c.result, ranked.c.checked_on)
    return select(*columns).where(ranked.c.rank == 1).order_by(ranked.c.kind)


def _load_results(connection: Connection, container_id: int) -> dict[int, tuple[Looked, ...]]:
    query = (
        select(check_results)
        .join(checks, check_results.c.check_id == checks.c.id)
        .where(checks.c.container_id == container_id)
    )
    found: dict[int, list[Looked]] = {}
    for row in connection.execute(query).mappings():
        looked = Looked(CheckKind(row["kind"]), CheckResult(row["result"]), row["note"])
        found.setdefault(row["check_id"], []).append(looked)
    order = list(CheckKind)
    return {
        key: tuple(sorted(some, key=lambda one: order.index(one.kind)))
        for key, some in found.items()
    }


def _tell(check: Check) -> str:
    results = {one.kind.value: one.result.value for one in check.results}
    said = {"checked_on": str(check.checked_on), "note": check.note, "results": results}
    return dump_json({name: value for name, value in said.items() if value})
