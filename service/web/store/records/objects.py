"""Paths of objects."""

from __future__ import annotations

from typing import Annotated
from urllib.parse import quote

from fastapi import APIRouter, Response

from service.store.handles import Connection
from service.store.lists.pages import ListedPage, list_objects
from service.store.load_records import load_object
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import (
    ExactNumber,
    ObjectNumber,
    SeenRecord,
    TheActing,
    TheAsked,
    TheCounter,
)
from service.web.store.matching import tag_record
from service.web.store.once import Made, make_once
from service.web.store.paging import ThePaging
from service.web.store.records.changing import add_record, change_record
from service.web.store.records.finding import find_places, find_record
from service.web.store.records.shapes import (
    ObjectBody,
    ObjectLine,
    ObjectPage,
    ObjectView,
    PlacesView,
)

router = APIRouter(route_class=GatedRoute)


@router.get("/api/objects", dependencies=[needs(Role.VIEW)])
def objects(
    counter: TheCounter,
    paging: ThePaging,
    number: Annotated[str | None, ExactNumber(examples=["1931.14.7"])] = None,
) -> ObjectPage:
    """List objects in natural order of their numbers, or the one that has a number."""
    with counter.reading() as connection:
        if number is None:
            page = list_objects(connection, limit=paging.limit, cursor=paging.after)
        else:
            page = ListedPage(find_record(load_object, connection, number))
    paging.link_next(page.next_cursor)
    lines = [ObjectLine(object_number=one.object_number, title=one.title) for one in page.records]
    return ObjectPage(objects=lines)


@router.post(
    "/api/objects", dependencies=[needs(Role.MANAGE)], status_code=201, response_model=ObjectView
)
def add_object(body: ObjectBody, asked: TheAsked) -> Response:
    """Add an object whose number is new."""

    def add(connection: Connection) -> Made:
        record = add_record(connection, body.record, stamp=asked.stamp)
        path = f"/api/objects/{quote(record.object_number)}"
        headers = {"Location": path, "ETag": tag_record(record)}
        return Made(ObjectView(record=record), headers=headers)

    return make_once(asked, body.model_dump_json(), add)


@router.get("/api/objects/{number:path}/places", dependencies=[needs(Role.VIEW)])
def places_of_object(number: ObjectNumber, counter: TheCounter) -> PlacesView:
    """Say which containers an object, or parts of it, lies in now, and where those are."""
    with counter.reading() as connection:
        load_object(connection, number)
        return PlacesView(object_number=number, places=find_places(connection, number))


@router.get("/api/objects/{number:path}", dependencies=[needs(Role.VIEW)])
def object_by_number(number: ObjectNumber, response: Response, counter: TheCounter) -> ObjectView:
    """Give an object as it is kept; its ETag is needed to change it."""
    with counter.reading() as connection:
        record = load_object(connection, number)
    response.headers["ETag"] = tag_record(record)
    return ObjectView(record=record)


@router.put("/api/objects/{number:path}", dependencies=[needs(Role.MANAGE)])
def change_object(
    number: ObjectNumber,
    body: ObjectBody,
    response: Response,
    acting: TheActing,
    if_match: SeenRecord = "",
) -> ObjectView:
    """Put a whole record in the place of the one you have seen; the history keeps both.

    Cards that say something else now come on the reprint list.
    """
    with acting.counter.writing() as connection:
        record = change_record(
            connection, body.record, number, if_match=if_match, stamp=acting.stamp
        )
    response.headers["ETag"] = tag_record(record)
    return ObjectView(record=record)
