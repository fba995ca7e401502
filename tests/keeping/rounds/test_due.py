from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from service.handling.checks.kinds import CHECKS, LOOKED_AT, CheckKind, CheckResult
from service.keeping.rounds.due import (
    ALL_KINDS,
    DueWish,
    list_due,
    list_due_in_short,
    put_overdue_first,
)
from service.records.museum.check_months import CheckMonths
from service.records.record import Collection
from service.store.handles import Connection
from service.store.kept.checks import IN_ORDER, Check, Looked, save_check
from service.store.save_records import save_records
from tests.keeping.made import BOX, COLLECTION, COVER
from tests.store.made import STAMP

DAY = date(2025, 11, 25)
TISSUE = {CheckKind.TISSUE}


def numbers(connection: Connection, day: date) -> list[str]:
    """Name what is due by a day."""
    return [one.stand.container_number for one in list_due(connection, day)]


def test_packed_containers_are_due_until_looked_at(connection: Connection) -> None:
    """The box is due again after a year, the garment cover for pests after three months."""
    assert numbers(connection, DAY) == [BOX, COVER]
    for number in (BOX, COVER):
        save_check(connection, Check(number, DAY, "", STAMP, IN_ORDER))
    assert numbers(connection, date(2026, 2, 24)) == []
    (cover,) = list_due(connection, date(2026, 2, 25))
    assert cover.stand.container_number == COVER
    assert [check.kind for check in cover.checks] == [CheckKind.PESTS]
    assert not cover.is_overdue(date(2026, 2, 25))
    assert cover.is_overdue(date(2026, 2, 26))
    (_, cover) = list_due(connection, date(2026, 11, 25))
    assert [check.kind for check in cover.checks] == list(LOOKED_AT)


def test_one_kind_can_be_asked_for(connection: Connection) -> None:
    """Who carries the pH pen sees the tissue alone."""
    found = list_due(connection, DAY, kinds={CheckKind.TISSUE})
    assert {check.kind for one in found for check in one.checks} == {CheckKind.TISSUE}


def test_one_place_can_be_asked_for(connection: Connection) -> None:
    """A place holds its parts, and not one whose name merely begins alike."""
    for place, expected in (
        ("Store 2", [BOX]),
        ("Store 2 / Bay 4", [BOX]),
        ("Store 2 / Bay", []),
        ("Store", []),
    ):
        found = list_due(connection, DAY, place=place)
        assert [one.stand.container_number for one in found] == expected


def test_overdue_comes_first_and_walking_order_stays(connection: Connection) -> None:
    """The cover without a place is walked to last, but comes first when it alone is overdue."""
    save_check(connection, Check(BOX, DAY, "", STAMP, IN_ORDER))
    today = date(2026, 11, 25)
    found = put_overdue_first(list_due(connection, today), today)
    assert [one.stand.container_number for one in found] == [COVER, BOX]


def test_the_museum_decides_how_often(connection: Connection) -> None:
    """Its months stand in the store; weighing is asked for where it chose so."""
    museum = replace(COLLECTION.museum, checks=CheckMonths(0, 0, 0, 0, weight=24, textiles=0))
    save_records(connection, Collection(museum=museum), stamp=STAMP)
    (box,) = list_due(connection, DAY)
    assert [check.kind for check in box.checks] == [CheckKind.WEIGHT]
    weighed = Looked(CheckKind.WEIGHT, CheckResult.OK)
    save_check(connection, Check(BOX, DAY, "", STAMP, (weighed,)))
    assert numbers(connection, date(2027, 11, 24)) == []
    assert numbers(connection, date(2027, 11, 25)) == [BOX]
    assert CHECKS[CheckKind.WEIGHT].months == 0


@pytest.mark.parametrize(
    "months",
    [CheckMonths(), CheckMonths(pests=0, textiles=0, natural_history=0), CheckMonths(pests=0)],
)
@pytest.mark.parametrize("looked_at", [(), (BOX,), (COVER,), (BOX, COVER)])
@pytest.mark.parametrize("day", [DAY, date(2026, 2, 26), date(2026, 11, 25), date(2027, 1, 1)])
def test_in_short_is_the_beginning_of_the_whole_list(
    connection: Connection, months: CheckMonths, looked_at: tuple[str, ...], day: date
) -> None:
    """The counts are those of all, the first ones those of the list, overdue first."""
    museum = replace(COLLECTION.museum, checks=months)
    save_records(connection, Collection(museum=museum), stamp=STAMP)
    for number in looked_at:
        save_check(connection, Check(number, DAY, "", STAMP, IN_ORDER))
    later = day + timedelta(days=30)
    for kinds, place, most in ((ALL_KINDS, "", 1), (ALL_KINDS, "Store 2", 6), (TISSUE, "", 6)):
        listed = list_due(connection, later, kinds=kinds, place=place)
        whole = put_overdue_first(listed, day)
        short = list_due_in_short(connection, DueWish(later, day, kinds, place), most=most)
        assert short.first == whole[:most]
        assert short.count == len(whole)
        assert short.overdue_count == sum(one.is_overdue(day) for one in whole)
