"""The shapes of checks, of what is due, and of what a finding asks for."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, datetime
from typing import Annotated

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, JsonValue

from service.handling.checks.due import DueCheck
from service.handling.checks.kinds import CheckKind, CheckResult
from service.keeping.rounds.due import DueContainer
from service.keeping.rounds.follow_ups import FollowUp
from service.keeping.rounds.note import Proposal
from service.store.kept.checks import Check, Looked
from service.store.lists.walk import Stand
from service.web.store.packings.shapes import Reason
from service.web.store.records.shapes import STRICT

_EXAMPLE: dict[str, JsonValue] = {
    "checked_on": "2026-11-20",
    "results": [
        {"kind": "pests", "result": "found", "note": "Larvae in the felt lining"},
        {"kind": "labels", "result": "ok"},
    ],
    "note": "Top layer only",
}


class LookBody(BaseModel):
    """What a look for one kind of thing gave."""

    model_config = STRICT

    kind: CheckKind
    result: CheckResult
    note: Reason = ""

    def to_looked(self) -> Looked:
        """Give the look as the store keeps it."""
        return Looked(self.kind, self.result, self.note)


def _once_each(looks: list[LookBody]) -> list[LookBody]:
    """Refuse two results of one kind.

    Raises:
        ValueError: When a kind stands there twice.
    """
    if len({look.kind for look in looks}) < len(looks):
        message = "each kind of check has one result"
        raise ValueError(message)
    return looks


class CheckBody(BaseModel):
    """A look at a container: the day, and what each look gave."""

    model_config = STRICT | ConfigDict(json_schema_extra={"examples": [_EXAMPLE]})

    checked_on: date
    results: Annotated[list[LookBody], AfterValidator(_once_each)] = Field(default_factory=list)
    note: Reason = ""


class LookView(BaseModel):
    """What a look for one kind of thing gave, as it was noted."""

    kind: CheckKind
    result: CheckResult
    note: str


class StandView(BaseModel):
    """A container where one meets it."""

    container_number: str
    title: str
    location: str


class ProposalView(BaseModel):
    """What pests ask for: a container to isolate, and where to look next, by codes of rules.

    `together` lies in the same container, `beside` stands at the same location, `next` before and
    behind it as one walks; of a container without a location only the first can be known.
    """

    isolate: str
    together: list[StandView]
    beside: list[StandView]
    next: list[StandView]
    is_located: bool
    rules: list[str]


class CheckView(BaseModel):
    """A check as it was noted; one from before there were results has none."""

    check: int
    container_number: str
    checked_on: date
    results: list[LookView]
    note: str
    by: str
    at: datetime
    proposal: ProposalView | None = None


class ChecksView(BaseModel):
    """The checks of a container, the latest day first."""

    checks: list[CheckView]


class DueCheckView(BaseModel):
    """A check that is due, how often it is made, and the rule that says so.

    `due_on`, `last_on` and `last_result` are null where it was never done.
    """

    kind: CheckKind
    due_on: date | None
    last_on: date | None
    last_result: CheckResult | None
    every_months: int
    rule: str


class DueView(BaseModel):
    """A container that is to be checked, and where one meets it."""

    container_number: str
    title: str
    location: str
    inside: str
    is_overdue: bool
    checks: list[DueCheckView]


class DuesView(BaseModel):
    """Containers that are to be checked, overdue first, each part in walking order."""

    due: list[DueView]


class FollowUpView(BaseModel):
    """Something found at the last look of its kind, and where."""

    container_number: str
    location: str
    kind: CheckKind
    found_on: date
    note: str


class FollowUpsView(BaseModel):
    """What was found and not yet seen in order again, as one walks."""

    found: list[FollowUpView]


def show_follow_up(one: FollowUp) -> FollowUpView:
    """Show something that was found."""
    return FollowUpView(
        container_number=one.stand.container_number,
        location=one.stand.location,
        kind=one.kind,
        found_on=one.found_on,
        note=one.note,
    )


def show_check(check: Check, proposal: Proposal | None = None) -> CheckView:
    """Show a check with what its findings ask for."""
    return CheckView(
        check=check.key,
        container_number=check.container_number,
        checked_on=check.checked_on,
        results=[LookView.model_validate(one, from_attributes=True) for one in check.results],
        note=check.note,
        by=check.stamp.actor,
        at=check.stamp.at,
        proposal=_show_proposal(proposal) if proposal else None,
    )


def show_due(one: DueContainer, today: date) -> DueView:
    """Show a container that is to be checked."""
    return DueView(
        container_number=one.stand.container_number,
        title=one.stand.title,
        location=one.stand.location,
        inside=one.stand.inside,
        is_overdue=one.is_overdue(today),
        checks=[_show_due_check(check) for check in one.checks],
    )


def _show_due_check(check: DueCheck) -> DueCheckView:
    return DueCheckView(
        kind=check.kind,
        due_on=check.due_on,
        last_on=check.last.checked_on if check.last else None,
        last_result=check.last.result if check.last else None,
        every_months=check.interval.months,
        rule=check.interval.rule.code,
    )


def _show_proposal(proposal: Proposal) -> ProposalView:
    beside = proposal.neighbours
    return ProposalView(
        isolate=proposal.container_number,
        together=_show_stands(beside.together),
        beside=_show_stands(beside.beside),
        next=_show_stands(beside.next),
        is_located=beside.is_located,
        rules=[rule.code for rule in proposal.rules],
    )


def _show_stands(stands: Iterable[Stand]) -> list[StandView]:
    return [StandView.model_validate(one, from_attributes=True) for one in stands]
