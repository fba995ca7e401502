"""Taking an object out for a while, against a slip that stays in its gap, and bringing it back."""

from __future__ import annotations

from datetime import date
from typing import Annotated

from fastapi import APIRouter, Form, Response

from service.contents.places import name_place
from service.languages.saying import say
from service.records.cells.dates import parse_date
from service.store.handles import Connection
from service.store.kept.outs import Slip, note_back, note_out
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.views.contents.seen import Desire, Text, TheDesire, make_change
from service.web.views.shell.notice import Notice, Undo

router = APIRouter(route_class=GatedRoute)

BACK_PATH = "/contents/returned"


@router.post("/contents/out", include_in_schema=False, dependencies=[needs(Role.PACK)])
def take_out_for_a_while(
    desire: TheDesire,
    to_whom: Text = "",
    due_back: Annotated[str, Form(max_length=60)] = "",
    why: Text = "",
) -> Response:
    """Note a slip; the place stays and the cards stay true."""
    if not to_whom.strip():
        return desire.refuse_field("to_whom", say("Say who has it, or where it is."))
    due = parse_date(due_back.strip()) if due_back.strip() else None
    if due_back.strip() and due is None:
        return desire.refuse_field("due_back", say("Write the day as 2026-12-20."))
    return _note(desire, to_whom.strip(), due, why.strip())


@router.post(BACK_PATH, include_in_schema=False, dependencies=[needs(Role.PACK)])
def bring_back(desire: TheDesire, out: Annotated[int, Form(ge=1, lt=2**31)]) -> Response:
    """Say that an object is back in its place."""

    def change(connection: Connection) -> Notice:
        slip = note_back(connection, out, stamp=desire.acting.stamp).slip
        return Notice(
            say("{object_number} is back in its place.", object_number=slip.object_number)
        )

    return make_change(desire, change)


def _note(desire: Desire, to_whom: str, due_back: date | None, why: str) -> Response:
    number, revision = desire.seen.container_number, desire.seen.revision

    def change(connection: Connection) -> Notice:
        place = desire.find(connection)
        slip = Slip(place.object_number, number, place.parts, to_whom, why, due_back)
        out = note_out(connection, slip, stamp=desire.acting.stamp)
        fields = {"number": number, "revision": str(revision), "out": str(out.out_id)}
        words = say(
            "{place} is out: {to_whom}. Leave its slip in the gap.",
            place=name_place(place),
            to_whom=to_whom,
        )
        return Notice(words, Undo(BACK_PATH, fields))

    return make_change(desire, change)
