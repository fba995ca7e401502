"""The shapes of packings and of changes to them."""

from __future__ import annotations

from datetime import date
from typing import Annotated

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    JsonValue,
    StringConstraints,
)

from service.records.record import PackingRecord, PlaceRecord
from service.web.replies.problems import FindingView
from service.web.store.records.shapes import STRICT

Reason = Annotated[str, StringConstraints(max_length=1000)]
Number = Annotated[str, StringConstraints(min_length=1, max_length=200)]
Revision = Annotated[int, Field(ge=0, lt=1_000_000_000)]


def _check_place(place: PlaceRecord) -> PlaceRecord:
    """Refuse a place that no object can have.

    Raises:
        ValueError: When it names no object, or its layer is not counted from 1.
    """
    if not place.object_number.strip():
        message = "the place names no object"
        raise ValueError(message)
    if place.layer < 1:
        message = "layers are counted from 1, the top one"
        raise ValueError(message)
    return place


Place = Annotated[PlaceRecord, AfterValidator(_check_place)]

_PLACE: dict[str, JsonValue] = {
    "object_number": "X.113",
    "layer": 1,
    "compartment": "A1",
    "note": "in bag",
}


def _example(**fields: JsonValue) -> ConfigDict:
    return STRICT | ConfigDict(json_schema_extra={"examples": [fields]})


class PackingBody(BaseModel):
    """Everything that lies in a container from now on."""

    model_config = _example(
        places=[{"object_number": "1931.14.7", "layer": 2}], reason="Repacked after the survey"
    )

    places: Annotated[list[Place], Field(max_length=20_000)]
    reason: Reason = ""


class PutInBody(BaseModel):
    """An object, or named parts of it, and its place."""

    model_config = _example(place=_PLACE, reason="Back from display")

    place: Place
    reason: Reason = ""


class PlaceAnewBody(BaseModel):
    """An object that lies in the container, and its new place there."""

    model_config = _example(place={"object_number": "1931.14.7", "layer": 1})

    place: Place
    reason: Reason = ""


class TakeOutBody(BaseModel):
    """An object that leaves the container for good; without parts, all of it that lies there."""

    model_config = _example(object_number="1931.14.7", reason="Transferred")

    object_number: Number
    parts: list[Number] = Field(default_factory=list, max_length=1000)
    reason: Reason = ""


class MoveBody(BaseModel):
    """An object on its way to a place in another container; revisions are those you have seen."""

    model_config = _example(
        place={"object_number": "1931.14.7"},
        from_container="B-027",
        from_revision=1,
        to_container="B-028",
        to_revision=0,
    )

    place: Place
    from_container: Number
    from_revision: Revision
    to_container: Number
    to_revision: Revision
    reason: Reason = ""


class PackingView(BaseModel):
    """One numbered state of a container's contents; revision 0 is that of one never packed.

    `findings` say how the current one is packed; an older one has none.
    """

    packing: PackingRecord
    findings: list[FindingView] = []


class MoveView(BaseModel):
    """Both containers after a move, and what is noticed in how they are packed now."""

    left: PackingRecord
    entered: PackingRecord
    findings: list[FindingView] = []


class PackingLine(BaseModel):
    """A packing in a list."""

    revision: int
    packed_by: str
    packed_on: date | None
    reason: str
    number_of_places: int


class PackingPage(BaseModel):
    """The packings of a container, newest first; the header Link leads to the next page."""

    container_number: str
    packings: list[PackingLine]
