"""Putting an object into a container: by its number, by words, or new on the spot."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Annotated

from fastapi import APIRouter, Form, Response

from service.contents.order import find_sharing
from service.contents.places import name_place
from service.keeping.repack import put_in
from service.languages.saying import said, say
from service.records.record import ObjectRecord, PlaceRecord
from service.store.handles import Connection
from service.store.lists.suggest import Suggestion, suggest_objects
from service.store.load_records import load_objects
from service.store.packing.load import load_packing
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.refusals import RefusedError
from service.web.store.records.changing import add_record
from service.web.store.records.finding import find_places
from service.web.store.records.shapes import PlaceView
from service.web.views.containers.asked import Asked, Trouble
from service.web.views.containers.contents import place_key
from service.web.views.contents.place import read_place
from service.web.views.contents.seen import Desire, Text, TheDesire, make_change, undo_packing
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice

router = APIRouter(route_class=GatedRoute)

PATH = "/contents/put-in"
MADE_PATH = "/contents/put-in-new"
WHAT = "what"


@dataclass(frozen=True, slots=True)
class _Found:
    """What may be meant by what was typed: one number, or several records, or nothing."""

    number: str = ""
    choices: tuple[Suggestion, ...] = ()
    lying: tuple[PlaceView, ...] = ()


@router.post(PATH, include_in_schema=False, dependencies=[needs(Role.PACK)])
def put_object_in(desire: TheDesire, what: Text = "") -> Response:
    """Put an object in; where it is not clear which, or it lies elsewhere, ask."""
    typed = " ".join(what.split())
    if not typed:
        return _refuse(desire, {WHAT: say("Type the number of an object, or words of its title.")})
    with desire.acting.counter.reading() as connection:
        found = _look_up(connection, typed, desire.seen.container_number)
    if not found.number:
        return desire.refuse(
            Trouble(
                desire.path,
                FilledForm(desire.fields, {WHAT: _ask(typed, found.choices)}),
                desire.fields,
                choices=found.choices,
                unknown=typed,
            ),
            replace(desire.asked, open=""),
        )
    place = read_place(found.number, desire.fields)
    if place.faults:
        return _refuse(desire, place.faults)
    if _lies_in_the_way(place.place, found.lying):
        words = say("{number} lies in another container.", number=found.number)
        form = FilledForm({**desire.fields, WHAT: found.number}, {WHAT: words})
        fields = {**desire.fields, WHAT: found.number}
        return desire.refuse(Trouble(desire.path, form, fields, lying=_with_keys(found.lying)))
    return _put(desire, place.place)


@router.post(MADE_PATH, include_in_schema=False, dependencies=[needs(Role.PACK)])
def put_new_in(
    desire: TheDesire,
    object_number: Annotated[str, Form(max_length=500)] = "",
    title: Text = "",
) -> Response:
    """Make the record of an object that is in none yet, and put it in: both or neither."""
    number, name = object_number.strip(), " ".join(title.split())
    place = read_place(number, desire.fields)
    faults = dict(place.faults)
    if not number:
        faults["object_number"] = say("It needs a number.")
    if not name:
        faults["title"] = say("Say in a few words what it is.")
    if faults:
        return _refuse(desire, faults, unknown=number)
    try:
        return _put(desire, place.place, made=ObjectRecord(number, title=name))
    except RefusedError as error:
        return _refuse(desire, {"object_number": said(error.detail)}, unknown=number)


def _put(desire: Desire, place: PlaceRecord, *, made: ObjectRecord | None = None) -> Response:
    """Put an object in whose record is there, or is made along with it."""

    def change(connection: Connection) -> Notice:
        if made is not None:
            add_record(connection, made, stamp=desire.acting.stamp)
        packed = put_in(connection, desire.seen, place, stamp=desire.acting.stamp)
        words = say("{place} is in.", place=name_place(place))
        return Notice(words, undo_packing(desire.seen, packed.revision))

    with desire.acting.counter.reading() as connection:
        here = load_packing(connection, desire.seen.container_number).places
    beside = find_sharing(here, place)
    if beside is not None:
        return _refuse(
            desire, {WHAT: say("{beside} lies in here already.", beside=name_place(beside))}
        )
    asked = Asked(
        card=desire.asked.card, side=desire.asked.side, focus="field-what", layer=place.layer
    )
    return make_change(desire, change, asked=asked)


def _look_up(connection: Connection, typed: str, container_number: str) -> _Found:
    """Find what is meant: a number that is exactly so, or what lies beside it in the records."""
    if load_objects(connection, [typed]):
        lying = find_places(connection, typed)
        elsewhere = [one for one in lying if one.container_number != container_number]
        return _Found(typed, (), tuple(elsewhere))
    return _Found("", suggest_objects(connection, typed, limit=12))


def _lies_in_the_way(place: PlaceRecord, lying: tuple[PlaceView, ...]) -> bool:
    return find_sharing(tuple(one.place for one in lying), place) is not None


def _with_keys(lying: tuple[PlaceView, ...]) -> tuple[tuple[str, PlaceView], ...]:
    return tuple((place_key(one.place), one) for one in lying)


def _ask(typed: str, choices: tuple[Suggestion, ...]) -> str:
    if choices:
        return say(
            "There is no object with exactly the number “{typed}”. Which one is it?", typed=typed
        )
    return say("“{typed}” is not in the records yet.", typed=typed)


def _refuse(desire: Desire, faults: Mapping[str, str], *, unknown: str = "") -> Response:
    form = FilledForm(desire.fields, faults)
    return desire.refuse(Trouble(desire.path, form, desire.fields, unknown=unknown))
