"""Paths of the papers of the round: check sheet, removal slip, isolation label, each one PDF."""

from __future__ import annotations

import shutil
from datetime import date
from pathlib import Path
from typing import Annotated, Literal

from fastapi import APIRouter, Query, Response
from fastapi import Path as InPath
from pydantic import BaseModel, ConfigDict, Field, JsonValue

from service.handling.checks.kinds import CheckKind
from service.keeping.rounds.check_sheet import SheetWish, print_sheet
from service.keeping.rounds.due import ALL_KINDS
from service.keeping.rounds.isolation import IsolationWish, print_isolation
from service.keeping.rounds.slips import print_slips
from service.store.kept.outs import load_out
from service.store.open import reading
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheActing
from service.web.store.packings.shapes import Number, Reason
from service.web.store.records.shapes import STRICT

router = APIRouter(route_class=GatedRoute)

_PDF = "application/pdf"
_EXAMPLE: dict[str, JsonValue] = {
    "number": "B-027",
    "why": "Pests found: larvae in the felt",
    "since": "2026-11-25",
    "copies": 2,
}

Within = Annotated[int, Query(ge=0, le=3650, description="Also what is due within so many days.")]

Place = Annotated[str, Query(max_length=500, description="Only at this location and its parts.")]


class IsolationBody(BaseModel):
    """What is to be isolated: a container, an object, or what came in and is in no record yet.

    Without `since` it is from today; without `until` the label has a line to write on.
    """

    model_config = STRICT | ConfigDict(json_schema_extra={"examples": [_EXAMPLE]})

    number: Number
    why: Reason = ""
    since: date | None = None
    until: date | None = None
    is_incoming: bool = False
    copies: Annotated[int, Field(ge=1, le=20)] = 1
    paper: Literal["A4", "Letter"] = "A4"


@router.post(
    "/api/check-sheet",
    dependencies=[needs(Role.PACK)],
    response_class=Response,
    responses={200: {"content": {_PDF: {}}}},
)
def check_sheet(
    acting: TheActing,
    within: Within = 0,
    kind: Annotated[list[CheckKind] | None, Query(description="Only these kinds of check.")] = None,
    paper: Literal["A4", "Letter"] = "A4",
    place: Place = "",
) -> Response:
    """Print what is due to walk with: photos, hazards, and boxes to tick. It keeps nothing."""
    wish = SheetWish(within, kind or ALL_KINDS, paper, place)
    with acting.counter.working() as desk:
        return _reply(print_sheet(desk, wish, stamp=acting.stamp))


@router.post(
    "/api/outs/{out}/slip",
    dependencies=[needs(Role.PACK)],
    response_class=Response,
    responses={200: {"content": {_PDF: {}}}},
)
def removal_slip(
    out: Annotated[int, InPath(ge=1, lt=2**31, examples=[1])],
    acting: TheActing,
    paper: Literal["A4", "Letter", "A6"] = "A4",
) -> Response:
    """Print the removal slip of something that was taken out, to leave in the gap."""
    with acting.counter.working() as desk:
        with reading(desk.engine) as connection:
            found = load_out(connection, out)
        return _reply(print_slips(desk, [found], paper=paper))


@router.post(
    "/api/isolation-labels",
    dependencies=[needs(Role.PACK)],
    response_class=Response,
    responses={200: {"content": {_PDF: {}}}},
)
def isolation_label(body: IsolationBody, acting: TheActing) -> Response:
    """Print a label for what is kept apart: since when, until when, why and whom to ask."""
    wish = IsolationWish(**body.model_dump())
    with acting.counter.working() as desk:
        return _reply(print_isolation(desk, wish, stamp=acting.stamp))


def _reply(path: Path) -> Response:
    try:
        data = path.read_bytes()
    finally:
        shutil.rmtree(path.parent)
    headers = {"Content-Disposition": f'inline; filename="{path.name}"'}
    return Response(data, media_type=_PDF, headers=headers)
