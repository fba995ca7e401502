"""Paths of removal slips: what is out of its container and is to come back."""

from __future__ import annotations

from datetime import date, datetime
from typing import Annotated

from fastapi import APIRouter, Path, Query, Response
from pydantic import BaseModel, ConfigDict, Field, JsonValue

from service.store.handles import Connection
from service.store.kept.outs import Out, Slip, load_outs, load_overdue, note_back, note_out
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheActing, TheAsked, TheCounter
from service.web.store.once import Made, make_once
from service.web.store.packings.shapes import Number, Reason
from service.web.store.records.shapes import STRICT

router = APIRouter(route_class=GatedRoute)

_EXAMPLE: dict[str, JsonValue] = {
    "object_number": "1931.14.7",
    "container_number": "B-027",
    "to_whom": "Conservation, R. Vane",
    "reason": "Cleaning",
    "due_back": "2026-12-20",
}


class SlipBody(BaseModel):
    """A removal slip: what goes from where to whom, and why; without parts, all of it."""

    model_config = STRICT | ConfigDict(json_schema_extra={"examples": [_EXAMPLE]})

    object_number: Number
    container_number: Number
    parts: list[Number] = Field(default_factory=list, max_length=1000)
    to_whom: Reason = ""
    reason: Reason = ""
    due_back: date | None = None


class OutView(BaseModel):
    """A slip in use: who took the object out and when, and when it came back."""

    out_id: int
    object_number: str
    container_number: str
    parts: list[str]
    to_whom: str
    reason: str
    due_back: date | None
    by: str
    at: datetime
    back_at: datetime | None


class OutsView(BaseModel):
    """Slips of what is out now, the oldest first."""

    outs: list[OutView]


@router.get("/api/outs", dependencies=[needs(Role.VIEW)])
def outs(
    counter: TheCounter,
    container: Annotated[str, Query(max_length=500, description="Only from this one.")] = "",
    object_number: Annotated[
        str, Query(alias="object", max_length=500, description="Only this object.")
    ] = "",
    due_before: Annotated[date | None, Query(description="Only what is due before a day.")] = None,
) -> OutsView:
    """List what is out of its container now."""
    with counter.reading() as connection:
        if due_before is None:
            found = load_outs(connection, container_number=container, object_number=object_number)
        else:
            found = load_overdue(connection, due_before)
    wanted = (
        one
        for one in found
        if container in {"", one.slip.container_number}
        and object_number in {"", one.slip.object_number}
    )
    return OutsView(outs=[_show(one) for one in wanted])


@router.post("/api/outs", dependencies=[needs(Role.PACK)], status_code=201, response_model=OutView)
def take_out_against_slip(body: SlipBody, asked: TheAsked) -> Response:
    """Take an object out against a removal slip; its place stays and the cards stay true."""
    slip = Slip(**{**body.model_dump(), "parts": tuple(body.parts)})

    def make(connection: Connection) -> Made:
        return Made(_show(note_out(connection, slip, stamp=asked.stamp)))

    return make_once(asked, body.model_dump_json(), make)


@router.post("/api/outs/{out}/back", dependencies=[needs(Role.PACK)])
def bring_back(
    out: Annotated[int, Path(ge=1, lt=2**31, examples=[1])], acting: TheActing
) -> OutView:
    """Say that an object is back in its place; said twice it changes nothing."""
    with acting.counter.writing() as connection:
        return _show(note_back(connection, out, stamp=acting.stamp))


def _show(out: Out) -> OutView:
    slip = out.slip
    return OutView(
        out_id=out.out_id,
        object_number=slip.object_number,
        container_number=slip.container_number,
        parts=list(slip.parts),
        to_whom=slip.to_whom,
        reason=slip.reason,
        due_back=slip.due_back,
        by=out.stamp.actor,
        at=out.stamp.at,
        back_at=out.back_at,
    )
