"""Takes back what was put down last."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Form, Response
from pydantic import BaseModel, Field

from service.errors import NotFoundError, PackedElsewhereError
from service.keeping.table.take_up import TakenUp, take_up
from service.languages.saying import say
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.packings.items import ItemView
from service.web.views.pack.addresses import page_of_table
from service.web.views.shell.notice import Notice, Undo, go_to
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

PATH = "/pack/undo"
_MOST = 999_999_999


class UndoFields(BaseModel):
    """What the notice of an item sends back."""

    container: str = Field(max_length=500)
    object_number: str = Field(max_length=500)
    layer: int = Field(default=1, ge=0, le=1000)
    before: int = Field(ge=0, le=_MOST)
    after: int = Field(ge=0, le=_MOST)
    photo: str = Field(default="", pattern="^(?:[0-9a-f]{64})?$")
    moved_from: str = Field(default="", max_length=500)
    moved_before: int = Field(default=0, ge=0, le=_MOST)


@router.post(PATH, include_in_schema=False, dependencies=[needs(Role.PACK)])
def take_item_back(acting: ThePageActing, fields: Annotated[UndoFields, Form()]) -> Response:
    """Take one thing up again; what somebody else moved meanwhile stays where it is."""
    wanted = TakenUp(
        fields.container,
        fields.object_number,
        fields.before,
        fields.after,
        fields.photo,
        fields.moved_from,
        fields.moved_before,
    )
    words = say(
        "{object_number} is taken back. Its record stays.", object_number=fields.object_number
    )
    try:
        with acting.counter.writing() as connection:
            take_up(connection, wanted, stamp=acting.stamp)
    except (NotFoundError, PackedElsewhereError):
        words = say(
            "{object_number} does not lie here as it did; nothing was changed.",
            object_number=fields.object_number,
        )
    return go_to(page_of_table(fields.container, layer=fields.layer), Notice(words))


def undo_item(done: ItemView) -> Undo:
    """Give the form that takes an item back."""
    fields = {
        "container": done.container_number,
        "object_number": done.object_number,
        "layer": str(done.layer),
        "before": str(done.before),
        "after": str(done.revision),
        "photo": done.photo_sha256,
        "moved_from": done.moved_from,
        "moved_before": str(done.moved_before),
    }
    return Undo(PATH, fields)
