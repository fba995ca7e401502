"""Paths of containers; what lies in them has paths of its own."""

from __future__ import annotations

from typing import Annotated
from urllib.parse import quote

from fastapi import APIRouter, Response

from service.records.record import ContainerRecord
from service.store.handles import Connection
from service.store.lists.pages import ListedPage, list_containers
from service.store.load_records import load_container
from service.store.packing.load import find_held, load_held
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import (
    Asked,
    ContainerNumber,
    ExactNumber,
    SeenRecord,
    TheActing,
    TheAsked,
    TheCounter,
)
from service.web.store.matching import tag_record
from service.web.store.once import Made, make_once
from service.web.store.paging import ThePaging
from service.web.store.records.changing import add_record, change_record
from service.web.store.records.finding import find_record
from service.web.store.records.shapes import (
    ContainerBody,
    ContainerLine,
    ContainerPage,
    ContainerView,
)

router = APIRouter(route_class=GatedRoute)


@router.get("/api/containers", dependencies=[needs(Role.VIEW)])
def containers(
    counter: TheCounter,
    paging: ThePaging,
    number: Annotated[str | None, ExactNumber(examples=["B-027"])] = None,
) -> ContainerPage:
    """List containers in natural order of their numbers, or the one that has a number."""
    with counter.reading() as connection:
        if number is None:
            page = list_containers(connection, limit=paging.limit, cursor=paging.after)
        else:
            page = ListedPage(find_record(load_container, connection, number))
        held = load_held(connection, [one.container_number for one in page.records])
    paging.link_next(page.next_cursor)
    lines = [
        ContainerLine(
            container_number=one.container_number,
            title=one.title,
            location=list(one.location),
            revision=held[one.container_number].revision,
        )
        for one in page.records
    ]
    return ContainerPage(containers=lines)


@router.post(
    "/api/containers",
    dependencies=[needs(Role.MANAGE)],
    status_code=201,
    response_model=ContainerView,
)
def add_container(body: ContainerBody, asked: TheAsked) -> Response:
    """Add a container whose number is new; nothing lies in it."""
    return make_container(asked, body.model_dump_json(), body.record)


@router.get("/api/containers/{number:path}", dependencies=[needs(Role.VIEW)])
def container(number: ContainerNumber, response: Response, counter: TheCounter) -> ContainerView:
    """Give a container as it is kept; its ETag is needed to change it."""
    with counter.reading() as connection:
        record = load_container(connection, number)
        revision = find_held(connection, number).revision
    response.headers["ETag"] = tag_record(record)
    return ContainerView(record=record, revision=revision)


@router.put("/api/containers/{number:path}", dependencies=[needs(Role.MANAGE)])
def change_container(
    number: ContainerNumber,
    body: ContainerBody,
    response: Response,
    acting: TheActing,
    if_match: SeenRecord = "",
) -> ContainerView:
    """Put a whole record in the place of the one you have seen; the history keeps both.

    Cards that say something else now come on the reprint list.
    """
    with acting.counter.writing() as connection:
        record = change_record(
            connection, body.record, number, if_match=if_match, stamp=acting.stamp
        )
        revision = find_held(connection, number).revision
    response.headers["ETag"] = tag_record(record)
    return ContainerView(record=record, revision=revision)


def make_container(asked: Asked, sent: str, wanted: ContainerRecord) -> Response:
    """Add a container once, and say where it is from now on.

    Raises:
        RefusedError: When its number is taken, or is none, or the record cannot be printed.
    """

    def make(connection: Connection) -> Made:
        record = add_record(connection, wanted, stamp=asked.stamp)
        path = f"/api/containers/{quote(record.container_number)}"
        headers = {"Location": path, "ETag": tag_record(record)}
        return Made(ContainerView(record=record, revision=0), headers=headers)

    return make_once(asked, sent, make)
