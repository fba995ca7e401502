"""The path of the search."""

from __future__ import annotations

from datetime import datetime
from typing import Annotated

from fastapi import APIRouter, Query
from pydantic import BaseModel

from service.store.lists.search import MOST_HITS, search
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter

router = APIRouter(route_class=GatedRoute)


class LyingView(BaseModel):
    """A container in which an object, or the parts that are named, lies."""

    container_number: str
    location: str
    parts: list[str]


class ObjectHitView(BaseModel):
    """An object that was found, where it lies, and since when it is out of there."""

    object_number: str
    title: str
    lies_in: list[LyingView]
    out_since: datetime | None


class ContainerHitView(BaseModel):
    """A container that was found."""

    container_number: str
    title: str
    location: str


class FoundView(BaseModel):
    """What was found, in natural order; `more` tells that there is more than is given."""

    objects: list[ObjectHitView]
    containers: list[ContainerHitView]
    more: bool


@router.get("/api/search", dependencies=[needs(Role.VIEW)])
def search_store(
    counter: TheCounter,
    q: Annotated[
        str,
        Query(max_length=500, description="Beginnings of words.", examples=["marlin boxwood"]),
    ],
    limit: Annotated[int, Query(ge=1, le=MOST_HITS, description="How many of each kind.")] = 50,
) -> FoundView:
    """Find objects and containers by number, title, name, material, hazard or place.

    Every word that is asked for must begin one of theirs; accents and capitals are no matter.
    """
    with counter.reading() as connection:
        found = search(connection, q, limit=limit)
    return FoundView.model_validate(found, from_attributes=True)
