from __future__ import annotations

from typing import NamedTuple

from sqlalchemy import Connection

from service.findings import Finding
from service.records.record import PackingRecord, PlaceRecord
from service.store.history import Entry, begin_change
from service.store.packing.differ import Course, Repacking
from service.store.packing.load import load_packing
from service.store.packing.take_in import Outcome, plan_packings, take_in_packings
from tests.store.made import HAT, LAMP, LEAD, STAMP, collection


class Taken(NamedTuple):
    """What was planned, and what the history is told of it."""

    outcome: Outcome
    findings: tuple[Finding, ...]
    repacked: dict[str, Repacking]
    entries: tuple[Entry, ...]


def _take_in(connection: Connection, *packings: PackingRecord) -> Taken:
    change = begin_change(connection, STAMP)
    plan = plan_packings(connection, packings, new_containers=())
    entries = take_in_packings(connection, change, plan)
    return Taken(plan.outcome, plan.findings, plan.repacked, entries)


def test_differences_become_revisions(connection: Connection) -> None:
    """What differs is the next revision, what is the same is none; the highest number counts."""
    _, same = collection().packings
    taken = _take_in(
        connection,
        PackingRecord("B-001", 4, reason="old"),
        PackingRecord("B-001", 7, reason="latest"),
        PackingRecord("B-001", 7, reason="twice"),
        same,
        PackingRecord("B-003", 1, (PlaceRecord(LAMP),)),
    )
    assert taken.outcome == Outcome(("B-003",), ("B-001",), ("B-002",))
    assert list(taken.repacked) == ["B-001"]
    assert {each.course for each in taken.repacked["B-001"].places} == {Course.OUT}
    assert load_packing(connection, "B-001") == PackingRecord("B-001", 2, reason="latest")
    assert [entry.detail for entry in taken.entries] == [
        '{"reason":"latest","revision_in_source":7}',
        "",
    ]


def test_an_exchange_is_no_clash(connection: Connection) -> None:
    """Objects may change places between containers that are taken in together."""
    taken = _take_in(
        connection,
        PackingRecord("B-001", places=(PlaceRecord(HAT),)),
        PackingRecord("B-002", places=(PlaceRecord(LEAD),)),
    )
    assert taken.outcome.changed == ("B-001", "B-002")
    assert taken.findings == ()


def test_what_cannot_be_is_a_finding(connection: Connection) -> None:
    """A box that is not in the records and a thing in two boxes are refused, the rest is saved."""
    taken = _take_in(
        connection,
        PackingRecord("B-999"),
        PackingRecord("B-003", places=(PlaceRecord(LEAD),)),
        PackingRecord("B-002", places=(PlaceRecord(LAMP),)),
    )
    assert taken.outcome == Outcome(changed=("B-002",))
    assert [(finding.code, str(finding.where)) for finding in taken.findings] == [
        ("unknown-container", "B-999"),
        ("object-in-two-places", f"B-003, {LEAD}"),
    ]
    assert load_packing(connection, "B-003").revision == 0
