"""What those who pack may say of a container: that it is there, where it stands, what it weighs."""

from __future__ import annotations

from dataclasses import replace

from fastapi import APIRouter, Response
from pydantic import BaseModel, ConfigDict

from service.records.record import ContainerKind, ContainerRecord, Weight
from service.store.load_records import load_container
from service.store.packing.load import find_held
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import ContainerNumber, SeenRecord, TheActing, TheAsked
from service.web.store.matching import tag_record
from service.web.store.records.changing import change_record
from service.web.store.records.containers import make_container
from service.web.store.records.shapes import STRICT, ContainerView

router = APIRouter(route_class=GatedRoute)


class BegunBody(BaseModel):
    """A container of which only number and kind are known yet."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={"examples": [{"container_number": "B-060", "kind": "box"}]}
    )

    container_number: str
    kind: ContainerKind = ContainerKind.BOX


class HandlingBody(BaseModel):
    """What changes while one packs; what is not sent stays as it is (RFC 7396)."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={
            "examples": [
                {
                    "location": ["Store 1", "Bay 2", "Shelf 3"],
                    "gross": {"weight_g": 6200.0},
                    "packing_materials": ["acid-free tissue"],
                }
            ]
        }
    )

    location: tuple[str, ...] = ()
    gross: Weight | None = None
    packing_materials: tuple[str, ...] = ()


@router.post(
    "/api/begun-containers",
    dependencies=[needs(Role.PACK)],
    status_code=201,
    response_model=ContainerView,
)
def begin_container(body: BegunBody, asked: TheAsked) -> Response:
    """Begin a container at the packing table; whoever manages records fills in the rest."""
    wanted = ContainerRecord(body.container_number, body.kind)
    return make_container(asked, body.model_dump_json(), wanted)


@router.patch("/api/containers/{number:path}", dependencies=[needs(Role.PACK)])
def change_handling(
    number: ContainerNumber,
    body: HandlingBody,
    response: Response,
    acting: TheActing,
    if_match: SeenRecord = "",
) -> ContainerView:
    """Say where a container stands, what it weighs as it is, and what it is packed with."""
    sent = {name: getattr(body, name) for name in body.model_fields_set}
    with acting.counter.writing() as connection:
        wanted = replace(load_container(connection, number), **sent)
        record = change_record(connection, wanted, number, if_match=if_match, stamp=acting.stamp)
        revision = find_held(connection, number).revision
    response.headers["ETag"] = tag_record(record)
    return ContainerView(record=record, revision=revision)
