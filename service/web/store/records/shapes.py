"""The shapes of records in requests and replies; fields are those of the record itself."""

from __future__ import annotations

import json
from datetime import datetime

from pydantic import BaseModel, ConfigDict, Field
from pydantic.config import JsonDict

from service.records.record import ContainerRecord, ObjectRecord, PlaceRecord
from service.store.history import Event

STRICT = ConfigDict(extra="forbid", allow_inf_nan=False)

_OBJECT_EXAMPLE: JsonDict = {
    "record": {
        "object_number": "1931.14.9",
        "title": "Fid, lignum vitae",
        "hazards": [{"code": "sharp", "state": "presumed", "note": "worn point"}],
    }
}
_CONTAINER_EXAMPLE: JsonDict = {
    "record": {
        "container_number": "PM-B-099",
        "title": "Rope work",
        "location": ["Store 1", "Bay 2"],
        "lid_size": {"width_mm": 400, "height_mm": 300},
    }
}


class ObjectBody(BaseModel):
    """An object as it is to be; fields that are left out hold their defaults."""

    model_config = STRICT | ConfigDict(json_schema_extra={"examples": [_OBJECT_EXAMPLE]})

    record: ObjectRecord


class ContainerBody(BaseModel):
    """A container as it is to be, without what lies in it."""

    model_config = STRICT | ConfigDict(json_schema_extra={"examples": [_CONTAINER_EXAMPLE]})

    record: ContainerRecord


class ObjectView(BaseModel):
    """An object as it is kept; `record.source` is the row it came from."""

    record: ObjectRecord


class ContainerView(BaseModel):
    """A container as it is kept, and the revision of its current packing, 0 before the first."""

    record: ContainerRecord
    revision: int


class ObjectLine(BaseModel):
    """An object in a list."""

    object_number: str
    title: str


class ContainerLine(BaseModel):
    """A container in a list; the location begins with the outermost."""

    container_number: str
    title: str
    location: list[str]
    revision: int


class ObjectPage(BaseModel):
    """Objects in natural order; the header Link leads to the next page."""

    objects: list[ObjectLine]


class ContainerPage(BaseModel):
    """Containers in natural order; the header Link leads to the next page."""

    containers: list[ContainerLine]


class PlaceView(BaseModel):
    """Where an object, or named parts of it, lies now.

    `inside` names the containers around it, from the nearest outwards.
    """

    container_number: str
    title: str
    location: list[str]
    inside: list[str]
    place: PlaceRecord


class PlacesView(BaseModel):
    """Every place of an object; none where it is packed nowhere."""

    object_number: str
    places: list[PlaceView]


class EventView(BaseModel):
    """One thing that a change did; all of one change carry its number."""

    change: int
    at: datetime
    actor: str
    verb: str
    container_number: str
    object_number: str
    revision: int | None
    detail: dict[str, object] = Field(description="What it was and what it is, or the reason.")


class HistoryView(BaseModel):
    """What was done, oldest first."""

    events: list[EventView]


def show_event(event: Event) -> EventView:
    """Show an entry of the history."""
    entry = event.entry
    return EventView(
        change=event.change,
        at=event.stamp.at,
        actor=event.stamp.actor,
        verb=entry.verb,
        container_number=entry.container_number,
        object_number=entry.object_number,
        revision=entry.revision,
        detail=json.loads(entry.detail) if entry.detail else {},
    )
