"""When each check of a container is due: how often, since when, and why so often."""

from __future__ import annotations

from calendar import monthrange
from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import MAXYEAR, date

from service.contents.packing import Packing
from service.handling.checks.attractive import holds_natural_history, holds_textiles
from service.handling.checks.kinds import CHECKS, LOOKED_AT, CheckKind, CheckResult
from service.handling.checks.rules import (
    FOUND_AGAIN,
    MUSEUM_CHOICE,
    NATURAL_HISTORY_OFTEN,
    TEXTILES_OFTEN,
)
from service.handling.rule import Rule
from service.records.museum.check_months import CheckMonths
from service.records.record import ContainerKind

OFTEN_MONTHS = 3
FOUND_MONTHS = 1
USUAL = CheckMonths()

_NEVER_WEIGHED = frozenset({ContainerKind.GARMENT_COVER, ContainerKind.DRAWER})
"""What hangs on a rail or runs in a cabinet is not put on scales."""


@dataclass(frozen=True, slots=True)
class Interval:
    """How many months lie between two looks, and the rule that says so."""

    months: int
    rule: Rule


@dataclass(frozen=True, slots=True)
class DoneCheck:
    """What somebody noted of one kind of check on a day."""

    kind: CheckKind
    result: CheckResult
    checked_on: date


@dataclass(frozen=True, slots=True)
class DueCheck:
    """A check and its day; `due_on` and `last` are None where it was never done: due at once."""

    kind: CheckKind
    due_on: date | None
    last: DoneCheck | None
    interval: Interval

    def is_due(self, day: date) -> bool:
        """Tell whether it is to be done on that day or should have been before."""
        return self.due_on is None or self.due_on <= day

    def is_overdue(self, today: date) -> bool:
        """Tell whether its day has passed, or it was never done."""
        return self.due_on is None or self.due_on < today


def due_checks(
    packing: Packing, last: Iterable[DoneCheck], today: date, months: CheckMonths = USUAL
) -> tuple[DueCheck, ...]:
    """List what is due for a container, in the order of the sheet."""
    return tuple(check for check in plan_checks(packing, last, months) if check.is_due(today))


def plan_checks(
    packing: Packing, last: Iterable[DoneCheck], months: CheckMonths = USUAL
) -> tuple[DueCheck, ...]:
    """Say of each kind of check when it is due next; a container that holds nothing has none."""
    if not packing.everything:
        return ()
    done = _latest_done(last)
    found = ((kind, interval_for(kind, packing, months)) for kind in CheckKind)
    return tuple(
        _plan(kind, interval, done.get(kind), months)
        for kind, interval in found
        if interval is not None
    )


def interval_for(kind: CheckKind, packing: Packing, months: CheckMonths = USUAL) -> Interval | None:
    """Choose how often a kind of check is made: the shortest that applies; None for never."""
    if kind is CheckKind.WEIGHT and packing.container.kind in _NEVER_WEIGHED:
        return None
    intervals = [_choose(getattr(months, kind.value), _usual(kind))]
    if kind is CheckKind.PESTS and holds_textiles(packing):
        often = Interval(OFTEN_MONTHS, TEXTILES_OFTEN)
        intervals.append(_choose(months.textiles, often))
    if kind is CheckKind.PESTS and holds_natural_history(packing):
        often = Interval(OFTEN_MONTHS, NATURAL_HISTORY_OFTEN)
        intervals.append(_choose(months.natural_history, often))
    asked_for = (interval for interval in intervals if interval.months > 0)
    return min(asked_for, key=lambda interval: interval.months, default=None)


def may_be_due(
    last: Iterable[DoneCheck], day: date, months: CheckMonths, kinds: Collection[CheckKind]
) -> bool:
    """Tell whether a container of any kind and contents could have something due by a day.

    It is asked before contents are loaded: what says no here has nothing due.
    """
    done = _latest_done(last)
    for kind in kinds:
        shortest = _shortest(kind, months)
        if shortest and (kind not in done or add_months(done[kind].checked_on, shortest) <= day):
            return True
    return False


def is_surely_overdue(
    last: Iterable[DoneCheck], months: CheckMonths, kinds: Collection[CheckKind]
) -> bool:
    """Tell whether a container that holds anything is overdue: a check of all was never done."""
    done = _latest_done(last)
    return any(
        kind not in done and _choose(getattr(months, kind.value), _usual(kind)).months > 0
        for kind in LOOKED_AT
        if kind in kinds
    )


def _usual(kind: CheckKind) -> Interval:
    return Interval(CHECKS[kind].months, CHECKS[kind].rule)


def add_months(day: date, months: int) -> date:
    """Give the same day so many months on, or the last day of a month that is too short.

    Past the end of the calendar it gives its last day.
    """
    year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
    if year > MAXYEAR:
        return date.max
    return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))


def _shortest(kind: CheckKind, months: CheckMonths) -> int:
    """Give the fewest months that may lie between two looks, whatever is found; 0 for never."""
    usual = [(getattr(months, kind.value), CHECKS[kind].months)]
    if kind is CheckKind.PESTS:
        usual += [(months.textiles, OFTEN_MONTHS), (months.natural_history, OFTEN_MONTHS)]
    asked_for = [own if chosen is None else chosen for chosen, own in usual]
    asked_for = [one for one in asked_for if one > 0]
    found = FOUND_MONTHS if months.found is None else months.found
    return min([*asked_for, *([found] if found and asked_for else [])], default=0)


def _choose(chosen: int | None, usual: Interval) -> Interval:
    if chosen is None or chosen == usual.months:
        return usual
    return Interval(chosen, MUSEUM_CHOICE)


def _latest_done(last: Iterable[DoneCheck]) -> dict[CheckKind, DoneCheck]:
    """Keep the latest look of each kind, of one day the one noted last."""
    done: dict[CheckKind, DoneCheck] = {}
    for check in last:
        before = done.get(check.kind)
        if check.result is CheckResult.NOT_DONE:
            continue
        if before is None or before.checked_on <= check.checked_on:
            done[check.kind] = check
    return done


def _plan(
    kind: CheckKind, interval: Interval, last: DoneCheck | None, months: CheckMonths
) -> DueCheck:
    if last is None:
        return DueCheck(kind, None, None, interval)
    if last.result is CheckResult.FOUND:
        again = _choose(months.found, Interval(FOUND_MONTHS, FOUND_AGAIN))
        interval = again if 0 < again.months < interval.months else interval
    return DueCheck(kind, add_months(last.checked_on, interval.months), last, interval)
