"""Paths of the round: what is due, and what each look at a container gave."""

from __future__ import annotations

from datetime import date
from typing import Annotated

from fastapi import APIRouter, Path, Query, Response

from service.handling.checks.kinds import CheckKind
from service.keeping.rounds.due import ALL_KINDS, list_due, put_overdue_first
from service.keeping.rounds.follow_ups import list_follow_ups
from service.keeping.rounds.note import note_check
from service.store.handles import Connection
from service.store.kept.checks import IN_ORDER, Check, load_checks, take_back_check
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import ContainerNumber, TheActing, TheAsked, TheCounter
from service.web.store.once import Made, make_once
from service.web.store.packings.check_shapes import (
    CheckBody,
    ChecksView,
    CheckView,
    DuesView,
    FollowUpsView,
    show_check,
    show_due,
    show_follow_up,
)
from service.web.store.packings.papers import Place

router = APIRouter(route_class=GatedRoute)


@router.get("/api/checks/due", dependencies=[needs(Role.VIEW)])
def due_checks(
    counter: TheCounter,
    by: Annotated[
        date | None, Query(description="Due by this day; else today.", examples=["2026-12-31"])
    ] = None,
    kind: Annotated[list[CheckKind] | None, Query(description="Only these kinds of check.")] = None,
    place: Place = "",
) -> DuesView:
    """List the packed containers that are to be checked, overdue first, each part as one walks."""
    today = counter.now().date()
    with counter.reading() as connection:
        found = list_due(connection, by or today, kinds=kind or ALL_KINDS, place=place)
    return DuesView(due=[show_due(one, today) for one in put_overdue_first(found, today)])


@router.get("/api/checks/found", dependencies=[needs(Role.VIEW)])
def found_checks(counter: TheCounter) -> FollowUpsView:
    """List what was found and not yet seen in order again."""
    with counter.reading() as connection:
        found = list_follow_ups(connection)
    return FollowUpsView(found=[show_follow_up(one) for one in found])


@router.get("/api/containers/{number:path}/checks", dependencies=[needs(Role.VIEW)])
def checks(number: ContainerNumber, counter: TheCounter) -> ChecksView:
    """List the checks of a container, the latest first."""
    with counter.reading() as connection:
        found = load_checks(connection, number)
    return ChecksView(checks=[show_check(one) for one in found])


@router.post(
    "/api/containers/{number:path}/checks",
    dependencies=[needs(Role.PACK)],
    status_code=201,
    response_model=CheckView,
)
def note_look(number: ContainerNumber, body: CheckBody, asked: TheAsked) -> Response:
    """Note what each look at a container gave; no card becomes wrong by it.

    Without results everything that is looked at is in order, which is all but the weight. Where
    pests were found, `proposal` says what to isolate and where to look next.
    """
    results = tuple(one.to_looked() for one in body.results) or IN_ORDER
    check = Check(number, body.checked_on, body.note, asked.stamp, results)

    def make(connection: Connection) -> Made:
        return Made(show_check(*note_check(connection, check)))

    return make_once(asked, body.model_dump_json(), make)


@router.delete("/api/containers/{number:path}/checks/{check}", dependencies=[needs(Role.PACK)])
def take_back(
    number: ContainerNumber,
    check: Annotated[int, Path(ge=1, lt=2**31, examples=[1])],
    acting: TheActing,
) -> ChecksView:
    """Take back a check that was noted by mistake, and list those that are left."""
    with acting.counter.writing() as connection:
        take_back_check(connection, number, check, stamp=acting.stamp)
        return ChecksView(checks=[show_check(one) for one in load_checks(connection, number)])
