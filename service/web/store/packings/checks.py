"""Paths of the yearly look at each container."""

from __future__ import annotations

from datetime import date, datetime
from typing import Annotated

from fastapi import APIRouter, Query, Response
from pydantic import BaseModel, ConfigDict, JsonValue

from service.store.handles import Connection
from service.store.kept.checks import Check, list_due, load_checks, save_check
from service.web.store.asking import ContainerNumber, TheAsked, TheCounter
from service.web.store.once import Made, make_once
from service.web.store.packings.shapes import Reason
from service.web.store.records.shapes import STRICT

router = APIRouter()

_EXAMPLE: dict[str, JsonValue] = {"checked_on": "2026-11-20", "note": "No pests; tissue renewed"}


class CheckBody(BaseModel):
    """A look at a container: the day, and what was seen."""

    model_config = STRICT | ConfigDict(json_schema_extra={"examples": [_EXAMPLE]})

    checked_on: date
    note: Reason = ""


class CheckView(BaseModel):
    """A check as it was noted."""

    container_number: str
    checked_on: date
    note: str
    by: str
    at: datetime


class ChecksView(BaseModel):
    """The checks of a container, the latest day first."""

    checks: list[CheckView]


class DueView(BaseModel):
    """A container that is to be checked; `last_on` is null where it never was."""

    container_number: str
    title: str
    location: str
    last_on: date | None


class DuesView(BaseModel):
    """Containers that are to be checked, in walking order."""

    due: list[DueView]


@router.get("/api/checks/due")
def due_checks(
    counter: TheCounter,
    before: Annotated[
        date,
        Query(description="Those last checked before this day, or never.", examples=["2026-11-01"]),
    ],
) -> DuesView:
    """List the packed containers that nobody has looked at since a day."""
    with counter.reading() as connection:
        found = list_due(connection, before=before)
    return DuesView(due=[DueView.model_validate(one, from_attributes=True) for one in found])


@router.get("/api/containers/{number:path}/checks")
def checks(number: ContainerNumber, counter: TheCounter) -> ChecksView:
    """List the checks of a container, the latest first."""
    with counter.reading() as connection:
        found = load_checks(connection, number)
    return ChecksView(checks=[_show(one) for one in found])


@router.post("/api/containers/{number:path}/checks", status_code=201, response_model=CheckView)
def note_check(number: ContainerNumber, body: CheckBody, asked: TheAsked) -> Response:
    """Note that a container was looked at; no card becomes wrong by it."""

    def make(connection: Connection) -> Made:
        save_check(connection, number, body.checked_on, note=body.note, stamp=asked.stamp)
        return Made(_show(Check(number, body.checked_on, body.note, asked.stamp)))

    return make_once(asked, body.model_dump_json(), make)


def _show(check: Check) -> CheckView:
    return CheckView(
        container_number=check.container_number,
        checked_on=check.checked_on,
        note=check.note,
        by=check.stamp.actor,
        at=check.stamp.at,
    )
