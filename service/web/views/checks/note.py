"""Notes what each look at a container gave, and leads on to the next on the way."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date
from typing import Annotated

from fastapi import APIRouter, Depends, Request, Response

from service.errors import NotFoundError
from service.handling.checks.kinds import CheckKind, CheckResult
from service.keeping.rounds.way import next_on_way
from service.languages.saying import say
from service.store.kept.checks import IN_ORDER, Check, Looked, save_check, take_back_check
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.views.checks.look import load_stop, show_stop
from service.web.views.checks.wish import RoundWish, read_wish
from service.web.views.shell.forms import WHOLE, FilledForm
from service.web.views.shell.notice import Notice, Undo, go_to
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

_LONGEST_NOTE = 1000
_RESULTS = set(CheckResult)


async def _typed(request: Request) -> Mapping[str, str]:
    """Read every field: each kind of check has two of its own."""
    form = await request.form()
    return {name: value.strip() for name, value in form.items() if isinstance(value, str)}


Typed = Annotated[Mapping[str, str], Depends(_typed)]


@router.post("/checks/note", include_in_schema=False, dependencies=[needs(Role.PACK)])
def note_look(request: Request, acting: ThePageActing, typed: Typed) -> Response:
    """Note a look; where pests were found, go to what they ask for, else on along the way."""
    wish, today = _wish(typed), acting.stamp.at.date()
    number = typed.get("container", "")
    faults = find_faults(typed, today)
    if faults:
        with acting.counter.reading() as connection:
            stop = load_stop(connection, number, wish, today)
        return show_stop(request, stop, FilledForm(typed, faults))
    day = _day(typed.get("on", ""), today) or today
    check = Check(number, day, typed.get("note", ""), acting.stamp, read_looks(typed))
    with acting.counter.writing() as connection:
        due = wish.list_due(connection, today)
        key = save_check(connection, check)
    undo = Undo("/checks/take-back", {"container": number, "check": str(key), **wish.fields})
    following = next_on_way(due, number)
    if check.found(CheckKind.PESTS):
        then = {"then": following.stand.container_number} if following else {}
        path = wish.path("/checks/pests", container=number, **then)
        return go_to(
            path, Notice(say("Pests in {number} are noted. Do this now:", number=number), undo)
        )
    if following is None:
        words = say("{number} is noted. That was the last on your way.", number=number)
        return go_to(wish.path("/checks"), Notice(words, undo))
    stand = following.stand
    where = ", ".join(filter(None, (stand.container_number, stand.location)))
    words = say("{number} is noted. Next on your way: {where}", number=number, where=where)
    path = wish.path("/checks/look", container=stand.container_number)
    return go_to(path, Notice(words, undo))


@router.post("/checks/take-back", include_in_schema=False, dependencies=[needs(Role.PACK)])
def take_back(acting: ThePageActing, typed: Typed) -> Response:
    """Take back a look that was noted by mistake.

    Raises:
        NotFoundError: When there is no such check.
    """
    number, key = typed.get("container", ""), typed.get("check", "")
    with acting.counter.writing() as connection:
        if not re.fullmatch(r"[0-9]{1,9}", key):
            raise NotFoundError(number, what="check of container")
        take_back_check(connection, number, int(key), stamp=acting.stamp)
    path = _wish(typed).path("/checks/look", container=number)
    return go_to(path, Notice(say("The check of {number} is taken back.", number=number)))


def find_faults(typed: Mapping[str, str], today: date) -> Mapping[str, str]:
    """Say by field what cannot be noted."""
    faults = {}
    if not read_looks(typed):
        faults[WHOLE] = say("Nothing is chosen yet: say of one look at least what it gave.")
    day = _day(typed.get("on", ""), today)
    if day is None:
        faults["on"] = say("Write the day as 2026-11-25.")
    elif day > today:
        faults["on"] = say("This day is still to come.")
    notes = (name for name in typed if name == "note" or name.startswith("note_"))
    for name in notes:
        if len(typed[name]) > _LONGEST_NOTE:
            faults[name] = say(
                "At most {longest_note} letters can be kept.", longest_note=_LONGEST_NOTE
            )
    return faults


def read_looks(typed: Mapping[str, str]) -> tuple[Looked, ...]:
    """Read what each look gave.

    The button that says all else is in order names the looks that stood open on the page: what was
    folded away, such as pests found the last time, was not looked for.
    """
    said = {
        kind: Looked(kind, CheckResult(typed[kind]), typed.get(f"note_{kind}", ""))
        for kind in CheckKind
        if typed.get(kind) in _RESULTS
    }
    shown = typed.get("everything", "").split()
    found = {one.kind: one for one in IN_ORDER if one.kind in shown} | said
    return tuple(found[kind] for kind in CheckKind if kind in found)


def _wish(typed: Mapping[str, str]) -> RoundWish:
    return read_wish(*(typed.get(name, "") for name in ("within", "kind", "place")))


def _day(text: str, today: date) -> date | None:
    """Read a day; none is today, and None is no day."""
    try:
        return date.fromisoformat(text) if text else today
    except ValueError:
        return None
