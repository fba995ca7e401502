from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from service.contents.packing import Packing
from service.handling.checks.due import (
    DoneCheck,
    DueCheck,
    Interval,
    add_months,
    due_checks,
    interval_for,
    is_surely_overdue,
    may_be_due,
    plan_checks,
)
from service.handling.checks.kinds import LOOKED_AT, CheckKind, CheckResult
from service.handling.checks.rules import (
    FOUND_AGAIN,
    MUSEUM_CHOICE,
    NATURAL_HISTORY_OFTEN,
    TEXTILES_OFTEN,
    YEARLY,
)
from service.records.museum.check_months import CheckMonths
from service.records.record import ContainerKind, ObjectRecord
from tests.contents.made import BOX, packing

LOOKED = date(2025, 11, 14)
PESTS = CheckKind.PESTS
IRON = packing([ObjectRecord("X.1", materials=("iron",))])
WOOL = packing([ObjectRecord("X.1", materials=("wool",))])
PIKE = packing([ObjectRecord("X.1", object_name="mounted fish")])


def looked(kind: CheckKind = PESTS, result: CheckResult = CheckResult.OK) -> DoneCheck:
    """Give a look on the day."""
    return DoneCheck(kind, result, LOOKED)


def due(made: Packing, today: date, months: CheckMonths | None = None) -> list[DueCheck]:
    """Give what is due of the pests of a container looked at on the day."""
    found = due_checks(made, [looked()], today, months or CheckMonths())
    return [check for check in found if check.kind is PESTS]


@pytest.mark.parametrize(
    ("made", "not_yet", "first", "interval"),
    [
        (IRON, date(2026, 11, 13), date(2026, 11, 14), Interval(12, YEARLY)),
        (WOOL, date(2026, 2, 13), date(2026, 2, 14), Interval(3, TEXTILES_OFTEN)),
        (PIKE, date(2026, 2, 13), date(2026, 2, 14), Interval(3, NATURAL_HISTORY_OFTEN)),
    ],
    ids=["iron", "wool", "pike"],
)
def test_a_check_is_due_from_its_day(
    made: Packing, not_yet: date, first: date, interval: Interval
) -> None:
    """The day before it is not, on the day it is, and it says why so often."""
    assert due(made, not_yet) == []
    assert due(made, first) == [DueCheck(PESTS, first, looked(), interval)]
    assert not due(made, first)[0].is_overdue(first)
    assert due(made, first)[0].is_overdue(date(2026, 12, 1))


def test_what_was_never_done_is_due_at_once() -> None:
    """A silent record is no check; weighing is not asked for."""
    found = due_checks(IRON, [], LOOKED)
    assert [check.kind for check in found] == list(LOOKED_AT)
    assert all(check.due_on is None and check.is_overdue(LOOKED) for check in found)
    assert found[0].interval == Interval(12, YEARLY)


def test_an_empty_container_has_no_checks() -> None:
    """Nothing lies in it that could be eaten."""
    assert plan_checks(replace(IRON, layers=()), []) == ()


def test_textiles_are_not_tested_for_acid_more_often() -> None:
    """Pests alone decide the shorter round."""
    assert interval_for(CheckKind.TISSUE, WOOL) == interval_for(CheckKind.TISSUE, IRON)


def test_what_was_found_is_looked_at_again() -> None:
    """A month on; where looks are as near anyway, the usual rule stands."""
    found = looked(result=CheckResult.FOUND)
    (check,) = due_checks(
        IRON, [found], date(2025, 12, 14), CheckMonths(tissue=0, corrosion=0, labels=0)
    )
    assert (check.due_on, check.interval) == (date(2025, 12, 14), Interval(1, FOUND_AGAIN))
    often = CheckMonths(pests=1)
    plan = plan_checks(IRON, [found], often)[0]
    assert plan.interval == Interval(1, MUSEUM_CHOICE)


def test_a_look_not_done_is_no_look() -> None:
    """It leaves the one before in force; of one day the last that was noted counts."""
    later = DoneCheck(PESTS, CheckResult.NOT_DONE, date(2026, 1, 1))
    assert plan_checks(IRON, [looked(), later])[0].last == looked()
    assert plan_checks(IRON, [later, looked()])[0].last == looked()
    before = DoneCheck(PESTS, CheckResult.FOUND, date(2025, 1, 1))
    assert plan_checks(IRON, [looked(), before])[0].last == looked()
    found = looked(result=CheckResult.FOUND)
    assert plan_checks(IRON, [looked(), found])[0].last == found
    assert plan_checks(IRON, [found, looked()])[0].last == looked()


def test_the_museum_may_choose() -> None:
    """Its months count and say so; nought is never asked for; textiles stay with their own."""
    assert interval_for(PESTS, IRON, CheckMonths(pests=6)) == Interval(6, MUSEUM_CHOICE)
    assert interval_for(PESTS, IRON, CheckMonths(pests=0)) is None
    assert interval_for(PESTS, WOOL, CheckMonths(pests=0)) == Interval(3, TEXTILES_OFTEN)
    assert interval_for(PESTS, WOOL, CheckMonths(textiles=0)) == Interval(12, YEARLY)
    assert interval_for(PESTS, WOOL, CheckMonths(pests=2)) == Interval(2, MUSEUM_CHOICE)


@pytest.mark.parametrize(
    ("kind", "expected"),
    [
        (ContainerKind.BOX, Interval(24, MUSEUM_CHOICE)),
        (ContainerKind.TUBE, Interval(24, MUSEUM_CHOICE)),
        (ContainerKind.DRAWER, None),
        (ContainerKind.GARMENT_COVER, None),
    ],
)
def test_what_can_be_lifted_is_weighed_where_chosen(
    kind: ContainerKind, expected: Interval | None
) -> None:
    """A drawer and a cover on a rail are not put on scales."""
    made = packing([ObjectRecord("X.1")], replace(BOX, kind=kind))
    assert interval_for(CheckKind.WEIGHT, made, CheckMonths(weight=24)) == expected


@pytest.mark.parametrize("result", [CheckResult.OK, CheckResult.FOUND])
@pytest.mark.parametrize("made", [IRON, WOOL, PIKE], ids=["iron", "wool", "pike"])
@pytest.mark.parametrize(
    "months",
    [
        CheckMonths(),
        CheckMonths(found=0),
        CheckMonths(pests=0, textiles=0, found=6),
        CheckMonths(pests=2, weight=5, natural_history=0),
        CheckMonths(*[0] * 8),
        CheckMonths(textiles=2, natural_history=12, found=0),
        CheckMonths(pests=1, found=0),
    ],
)
def test_what_may_not_be_due_is_not(
    months: CheckMonths, made: Packing, result: CheckResult
) -> None:
    """The question asked without contents says no only where nothing is due, day by day."""
    last = [looked(kind, result) for kind in CheckKind]
    for days in range(0, 400, 3):
        day = LOOKED + timedelta(days=days)
        if due_checks(made, last, day, months):
            assert may_be_due(last, day, months, tuple(CheckKind))
    assert not may_be_due(last, LOOKED, months, tuple(CheckKind))


def test_what_was_never_done_may_be_due() -> None:
    """One kind that lacks a look is enough, unless it is never asked for."""
    assert may_be_due([looked()], LOOKED, CheckMonths(), tuple(CheckKind))
    assert not may_be_due([looked()], LOOKED, CheckMonths(), {PESTS, CheckKind.WEIGHT})


@pytest.mark.parametrize(
    ("day", "months", "expected"),
    [
        (date(2026, 1, 31), 1, date(2026, 2, 28)),
        (date(2024, 2, 29), 12, date(2025, 2, 28)),
        (date(2026, 11, 14), 3, date(2027, 2, 14)),
        (date(2026, 12, 31), 12, date(2027, 12, 31)),
        (date(9999, 11, 30), 1, date(9999, 12, 30)),
        (date(9999, 12, 1), 1, date(9999, 12, 31)),
    ],
)
def test_months_end_where_they_end(day: date, months: int, expected: date) -> None:
    """A month too short gives its last day; by the calendar, counted by hand."""
    assert add_months(day, months) == expected


def test_the_question_asked_without_contents_is_no_guess() -> None:
    """It says yes only from the day on which some contents would be due."""
    months = CheckMonths(12, 12, 12, 12, 0, textiles=12, natural_history=12, found=6)
    last = [looked(kind, CheckResult.FOUND) for kind in LOOKED_AT]
    assert not may_be_due(last, date(2026, 5, 13), months, LOOKED_AT)
    assert may_be_due(last, date(2026, 5, 14), months, LOOKED_AT)


@pytest.mark.parametrize("chosen", [(), (PESTS,), LOOKED_AT], ids=["none", "pests", "all"])
@pytest.mark.parametrize("done", [(), (PESTS,), LOOKED_AT], ids=["none", "pests", "all"])
@pytest.mark.parametrize(
    "months",
    [CheckMonths(), CheckMonths(pests=0), CheckMonths(*[0] * 8), CheckMonths(pests=1, tissue=0)],
)
def test_what_was_never_done_is_surely_overdue(
    months: CheckMonths, done: tuple[CheckKind, ...], chosen: tuple[CheckKind, ...]
) -> None:
    """As the plan of a box of iron has it; more is asked of wool, never less."""
    last = [looked(kind) for kind in done]
    never = {one.kind for one in plan_checks(IRON, last, months) if one.due_on is None}
    assert is_surely_overdue(last, months, chosen) == bool(never.intersection(chosen))
