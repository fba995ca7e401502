from __future__ import annotations

from datetime import date, timedelta

import pytest
from sqlalchemy import Connection

from service.errors import DayAheadError, NotFoundError
from service.handling.checks.due import DoneCheck
from service.handling.checks.kinds import CheckKind, CheckResult
from service.store.history import load_history
from service.store.kept.checks import (
    IN_ORDER,
    Check,
    Looked,
    load_checks,
    load_done,
    save_check,
    take_back_check,
)
from tests.store.made import LATER, STAMP

LONG_AGO, LATELY = date(2025, 3, 1), date(2026, 11, 2)
PESTS, TISSUE = CheckKind.PESTS, CheckKind.TISSUE
MOTH = Looked(PESTS, CheckResult.FOUND, "larvae in the felt")
YELLOW = Looked(TISSUE, CheckResult.NOT_DONE, "no pH pen")


def test_checks_are_kept_with_who_noted_them(connection: Connection) -> None:
    """The latest day comes first, whenever it was noted; results in the order of the sheet."""
    lately = Check("B-001", LATELY, "no pests", STAMP, IN_ORDER)
    long_ago = Check("B-001", LONG_AGO, "tissue yellow", LATER, (MOTH, YELLOW))
    for check in (lately, long_ago):
        save_check(connection, check)
    assert load_checks(connection, "B-001") == (lately, long_ago)
    assert long_ago.found(PESTS)
    assert not lately.found(PESTS)
    with pytest.raises(NotFoundError):
        save_check(connection, Check("B-999", LATELY, "", STAMP))


def test_a_look_is_not_noted_before_its_day(connection: Connection) -> None:
    """A year mistyped would keep the box off the round; tomorrow it may be elsewhere already."""
    today = STAMP.at.date()
    save_check(connection, Check("B-001", today + timedelta(days=1), "", STAMP))
    with pytest.raises(DayAheadError, match="B-001 cannot have been checked on 2126-11-25"):
        save_check(connection, Check("B-001", date(2126, 11, 25), "", STAMP))
    with pytest.raises(DayAheadError):
        save_check(connection, Check("B-001", today + timedelta(days=2), "", STAMP))
    assert len(load_checks(connection, "B-001")) == 1


def test_the_history_tells_what_was_found(connection: Connection) -> None:
    """Who asks what happened to a box reads of the moth there."""
    save_check(connection, Check("B-001", LATELY, "", STAMP, (MOTH,)))
    event = load_history(connection, container_number="B-001")[-1]
    assert event.entry.detail == '{"checked_on":"2026-11-02","results":{"pests":"found"}}'


def test_a_slip_of_the_finger_can_be_taken_back(connection: Connection) -> None:
    """The look before it counts again, and the history keeps both; twice is once too often."""
    before = Check("B-001", LONG_AGO, "", STAMP, IN_ORDER)
    save_check(connection, before)
    key = save_check(connection, Check("B-001", LATELY, "", STAMP, (MOTH,)))
    with pytest.raises(NotFoundError):
        take_back_check(connection, "B-002", key, stamp=LATER)
    take_back_check(connection, "B-001", key, stamp=LATER)
    assert load_checks(connection, "B-001") == (before,)
    assert DoneCheck(PESTS, CheckResult.OK, LONG_AGO) in load_done(connection)["B-001"]
    verbs = [event.entry.verb for event in load_history(connection, container_number="B-001")]
    assert verbs[-2:] == ["checked", "check taken back"]
    with pytest.raises(NotFoundError):
        take_back_check(connection, "B-001", key, stamp=LATER)


def test_the_latest_look_of_each_kind_counts(connection: Connection) -> None:
    """One that was not done counts for nothing; of one day the one noted last counts."""
    done = Looked(TISSUE, CheckResult.OK)
    for check in (
        Check("B-001", LONG_AGO, "", STAMP, (done, Looked(PESTS, CheckResult.OK))),
        Check("B-001", LATELY, "", STAMP, (YELLOW, Looked(PESTS, CheckResult.OK))),
        Check("B-001", LATELY, "", LATER, (MOTH,)),
        Check("B-002", LONG_AGO, "", STAMP),
    ):
        save_check(connection, check)
    expected = {
        "B-001": (
            DoneCheck(PESTS, CheckResult.FOUND, LATELY),
            DoneCheck(TISSUE, CheckResult.OK, LONG_AGO),
        )
    }
    assert load_done(connection) == expected
    assert load_done(connection, ["B-001", "B-002"]) == expected
    assert load_done(connection, ["B-002"]) == {}
