"""Putting what lies in a container into another order or other layers: step by step, or by hand."""

from __future__ import annotations

from dataclasses import replace
from typing import Annotated

from fastapi import APIRouter, Form, Response

from service.contents.order import Step, order_places, step_place
from service.contents.places import Places, name_place
from service.keeping.repack import lay_out
from service.languages.saying import say
from service.records.record import PlaceRecord
from service.store.handles import Connection
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.views.containers.contents import find_place
from service.web.views.contents.seen import (
    GoneError,
    TheDesire,
    make_change,
    undo_packing,
)
from service.web.views.shell.notice import Notice

router = APIRouter(route_class=GatedRoute)

_MOST_DIGITS = 5


@router.post("/contents/step", include_in_schema=False, dependencies=[needs(Role.PACK)])
def take_step(desire: TheDesire, step: Annotated[str, Form(max_length=60)]) -> Response:
    """Take one object a step further; the keyboard stays on the button."""
    name, _, key = step.partition(":")
    if name not in set(Step):
        return desire.refuse_field("", say("Press one of the buttons beside an object."))
    wanted = Step(name)
    asked = replace(desire.asked, open="", arrange=True, focus=f"{name}-{key}")

    def change(connection: Connection) -> Notice:
        place = replace(desire, key=key).find(connection)
        packed = lay_out(
            connection,
            desire.seen,
            lambda places: step_place(places, place, wanted),
            stamp=desire.acting.stamp,
        )
        if packed.revision == desire.seen.revision:
            return Notice(say("{place} cannot go further that way.", place=name_place(place)))
        words = _tell(wanted, name_place(place))
        return Notice(words, undo_packing(desire.seen, packed.revision))

    return make_change(replace(desire, asked=asked), change, asked=asked)


@router.post("/contents/order", include_in_schema=False, dependencies=[needs(Role.PACK)])
def keep_order(desire: TheDesire, order: Annotated[str, Form(max_length=2_000_000)]) -> Response:
    """Take over a whole order: `layer:key` of each object, from the top, between blanks."""
    asked = replace(desire.asked, open="", arrange=True)

    def change(connection: Connection) -> Notice:
        packed = lay_out(
            connection,
            desire.seen,
            lambda places: order_places(places, _read_order(places, order)),
            stamp=desire.acting.stamp,
        )
        if packed.revision == desire.seen.revision:
            return Notice(say("Everything lies as it did."))
        return Notice(say("The new order is kept."), undo_packing(desire.seen, packed.revision))

    return make_change(replace(desire, asked=asked), change, asked=asked)


def _tell(step: Step, place: str) -> str:
    words = {
        Step.UP: say("{place} is one further up.", place=place),
        Step.DOWN: say("{place} is one further down.", place=place),
        Step.LAYER_UP: say("{place} is one layer higher.", place=place),
        Step.LAYER_DOWN: say("{place} is one layer lower.", place=place),
    }
    return words[step]


def _read_order(places: Places, order: str) -> list[tuple[PlaceRecord, int]]:
    """Read an order.

    Raises:
        GoneError: When it is none.
    """
    wanted = []
    for one in order.split():
        layer, _, key = one.partition(":")
        place = find_place(places, key)
        if place is None or not (
            layer.isascii() and layer.isdigit() and len(layer) <= _MOST_DIGITS
        ):
            raise GoneError
        wanted.append((place, int(layer)))
    return wanted
