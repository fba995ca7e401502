"""Moving an object to another container: both get a revision, or neither."""

from __future__ import annotations

from dataclasses import replace
from typing import Annotated

from fastapi import APIRouter, Form, Response

from service.contents.places import name_place
from service.languages.saying import say
from service.records.record import PackingRecord, PlaceRecord
from service.store.handles import Connection
from service.store.lists.suggest import suggest_containers
from service.store.packing.load import find_held, load_held, load_packing
from service.store.packing.move import Move, move_object
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.views.containers.asked import Trouble
from service.web.views.containers.contents import find_place, place_key
from service.web.views.contents.place import read_place
from service.web.views.contents.seen import Desire, Text, TheDesire, make_change
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, Undo

router = APIRouter(route_class=GatedRoute)

PATH = "/contents/move"
TO = "to"


@router.post(PATH, include_in_schema=False, dependencies=[needs(Role.PACK)])
def move(
    desire: TheDesire, to: Text = "", to_layer: Annotated[str, Form(max_length=20)] = ""
) -> Response:
    """Move what lies at one place to another container; where it is not clear which, ask."""
    typed = " ".join(to.split())
    with desire.acting.counter.reading() as connection:
        is_there = typed in load_held(connection, [typed])
        choices = () if is_there else suggest_containers(connection, typed, limit=12)
    if not is_there:
        words = (
            say("There is no container “{typed}”.", typed=typed)
            if typed
            else say("Name the container it goes to.")
        )
        form = FilledForm(desire.fields, {TO: words})
        return desire.refuse(Trouble(PATH, form, desire.fields, choices=choices))
    if typed == desire.seen.container_number:
        return desire.refuse_field(TO, say("It lies in this one already."))
    aim = read_place("x", {**desire.fields, "layer": to_layer})
    if aim.faults:
        return desire.refuse_field(TO, next(iter(aim.faults.values())))
    return _move(desire, typed, aim.place)


def _move(desire: Desire, to: str, aim: PlaceRecord) -> Response:
    number, revision = desire.seen.container_number, desire.seen.revision

    def change(connection: Connection) -> Notice:
        was = desire.find(connection)
        wanted = Move(
            replace(
                aim,
                object_number=was.object_number,
                parts=was.parts,
                note=desire.fields.get("note", was.note),
            ),
            from_container=number,
            from_revision=revision,
            to_container=to,
            to_revision=find_held(connection, to).revision,
            reason=desire.seen.reason,
        )
        _, entered = move_object(connection, wanted, stamp=desire.acting.stamp)
        return Notice(
            say("{was} is in {to} now.", was=name_place(was), to=to), _undo(entered, was, number)
        )

    return make_change(desire, change)


@router.post("/contents/move-here", include_in_schema=False, dependencies=[needs(Role.PACK)])
def move_here(
    desire: TheDesire,
    origin: Annotated[str, Form(max_length=500)],
    origin_key: Annotated[str, Form(max_length=20)],
) -> Response:
    """Bring an object here that was found to lie in another container."""

    def change(connection: Connection) -> Notice:
        left = load_packing(connection, origin)
        was = find_place(left.places, origin_key)
        if was is None:
            return Notice(say("That does not lie in {origin} any more.", origin=origin))
        wanted = Move(
            replace(typed.place, object_number=was.object_number, parts=was.parts),
            from_container=origin,
            from_revision=left.revision,
            to_container=desire.seen.container_number,
            to_revision=desire.seen.revision,
            reason=desire.seen.reason,
        )
        _, entered = move_object(connection, wanted, stamp=desire.acting.stamp)
        words = say("{was} was moved here from {origin}.", was=name_place(was), origin=origin)
        return Notice(words, _undo(entered, was, origin))

    typed = read_place("x", desire.fields)
    if typed.faults:
        name, words = next(iter(typed.faults.items()))
        return desire.refuse_field(name, words)
    return make_change(desire, change, asked=replace(desire.asked, open="", focus="field-what"))


def _undo(entered: PackingRecord, was: PlaceRecord, origin: str) -> Undo:
    """Give the form that moves an object back to where it lay."""
    fields = {
        "number": entered.container_number,
        "revision": str(entered.revision),
        "key": place_key(was),
        "to": origin,
        "to_layer": str(was.layer),
        "compartment": was.compartment,
        "note": was.note,
    }
    return Undo(PATH, fields)
