"""Paths of packings: each change of a container's contents is its next revision."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import Annotated
from urllib.parse import quote

from fastapi import APIRouter, Path, Response
from pydantic import BaseModel

from service.keeping.checks.packings import check_container
from service.keeping.repack import Seen, place_anew, put_in, take_out
from service.records.record import PackingRecord
from service.store.handles import Connection
from service.store.packing.load import find_held, load_packing
from service.store.packing.save import save_packing
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.problems import FindingView, show_findings
from service.web.store.asking import Asked, ContainerNumber, SeenRevision, TheAsked, TheCounter
from service.web.store.matching import read_revision, tag_revision, telling_stale
from service.web.store.once import Made, make_once
from service.web.store.packings.shapes import (
    PackingBody,
    PackingLine,
    PackingPage,
    PackingView,
    PlaceAnewBody,
    PutInBody,
    TakeOutBody,
)
from service.web.store.paging import ThePaging, read_count

router = APIRouter(route_class=GatedRoute)

_BEYOND = 1_000_000_000
_Revision = Annotated[int, Path(ge=0, lt=_BEYOND, examples=[1])]


@router.get("/api/containers/{number:path}/packings", dependencies=[needs(Role.VIEW)])
def packings(
    number: ContainerNumber, response: Response, counter: TheCounter, paging: ThePaging
) -> PackingPage:
    """List the packings of a container, newest first; the ETag is that of the current one."""
    with counter.reading() as connection:
        revision = find_held(connection, number).revision
        before = read_count(paging.after)
        newest = revision if before is None else min(revision, before - 1)
        wanted = range(newest, max(0, newest - paging.limit), -1)
        found = [load_packing(connection, number, revision=each) for each in wanted]
    response.headers["ETag"] = tag_revision(revision)
    paging.link_next(str(wanted[-1]) if wanted and wanted[-1] > 1 else "")
    return PackingPage(container_number=number, packings=[_show_line(one) for one in found])


@router.get(
    "/api/containers/{number:path}/packings/{revision:int}", dependencies=[needs(Role.VIEW)]
)
def packing(
    number: ContainerNumber, revision: _Revision, response: Response, counter: TheCounter
) -> PackingView:
    """Give one packing; its ETag is what a change made from it needs."""
    with counter.reading() as connection:
        found = load_packing(connection, number, revision=revision)
        is_current = find_held(connection, number).revision == revision
        findings = _check(connection, number, counter.now().date()) if is_current else []
    response.headers["ETag"] = tag_revision(revision)
    return PackingView(packing=found, findings=findings)


@router.post(
    "/api/containers/{number:path}/packings",
    dependencies=[needs(Role.PACK)],
    status_code=201,
    response_model=PackingView,
)
def pack(
    number: ContainerNumber,
    body: PackingBody,
    asked: TheAsked,
    if_match: SeenRevision = "",
) -> Response:
    """Say everything that lies in a container now: this becomes its next revision.

    An object that lies in another container is refused: that would be a move.
    """
    seen = _see(number, if_match, body.reason)
    wanted = PackingRecord(
        number,
        places=tuple(body.places),
        packed_by=asked.stamp.actor,
        packed_on=asked.stamp.at.date(),
        reason=body.reason,
    )
    return _repack(
        asked,
        body,
        seen,
        lambda connection: save_packing(
            connection, wanted, expected_revision=seen.revision, stamp=asked.stamp
        ),
    )


@router.post(
    "/api/containers/{number:path}/put-in",
    dependencies=[needs(Role.PACK)],
    status_code=201,
    response_model=PackingView,
)
def put_object_in(
    number: ContainerNumber,
    body: PutInBody,
    asked: TheAsked,
    if_match: SeenRevision = "",
) -> Response:
    """Put an object, or named parts of it, into a container."""
    seen = _see(number, if_match, body.reason)
    return _repack(
        asked,
        body,
        seen,
        lambda connection: put_in(connection, seen, body.place, stamp=asked.stamp),
    )


@router.post(
    "/api/containers/{number:path}/take-out",
    dependencies=[needs(Role.PACK)],
    status_code=201,
    response_model=PackingView,
)
def take_object_out(
    number: ContainerNumber,
    body: TakeOutBody,
    asked: TheAsked,
    if_match: SeenRevision = "",
) -> Response:
    """Take an object, or named parts of it, out of a container for good."""
    seen = _see(number, if_match, body.reason)
    parts = tuple(body.parts)
    return _repack(
        asked,
        body,
        seen,
        lambda connection: take_out(
            connection, seen, body.object_number, parts=parts, stamp=asked.stamp
        ),
    )


@router.post(
    "/api/containers/{number:path}/place-anew",
    dependencies=[needs(Role.PACK)],
    status_code=201,
    response_model=PackingView,
)
def place_object_anew(
    number: ContainerNumber,
    body: PlaceAnewBody,
    asked: TheAsked,
    if_match: SeenRevision = "",
) -> Response:
    """Give an object, or the same parts of it, another place in its container."""
    seen = _see(number, if_match, body.reason)
    return _repack(
        asked,
        body,
        seen,
        lambda connection: place_anew(connection, seen, body.place, stamp=asked.stamp),
    )


def _see(number: str, if_match: str, reason: str) -> Seen:
    return Seen(number, read_revision(if_match), reason)


def _repack(
    asked: Asked,
    body: BaseModel,
    seen: Seen,
    change: Callable[[Connection], PackingRecord],
) -> Response:
    """Make a change from the state that was seen, and answer with the new packing."""

    def make(connection: Connection) -> Made:
        with telling_stale():
            saved = change(connection)
        path = f"/api/containers/{quote(saved.container_number)}/packings/{saved.revision}"
        headers = {"Location": path, "ETag": tag_revision(saved.revision)}
        findings = _check(connection, saved.container_number, asked.stamp.at.date())
        return Made(PackingView(packing=saved, findings=findings), headers=headers)

    return make_once(asked, f"{seen.revision} {body.model_dump_json()}", make)


def _check(connection: Connection, number: str, today: date) -> list[FindingView]:
    return show_findings(check_container(connection, number, today=today))


def _show_line(packing: PackingRecord) -> PackingLine:
    return PackingLine(
        revision=packing.revision,
        packed_by=packing.packed_by,
        packed_on=packing.packed_on,
        reason=packing.reason,
        number_of_places=len(packing.places),
    )
