"""Taking a whole import back: first what would go back, then the change itself."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Form, Query, Request, Response

from service.keeping.intake.undo import preview_undo, undo_import
from service.languages.saying import say
from service.store.people.role import Role
from service.store.taking_back.states import ChangedState
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.intake.list import show_imports
from service.web.views.shell.addresses import page_with
from service.web.views.shell.notice import Notice, Undo, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

SHOWN = 60
_MOST = 2**31 - 1


@router.get("/import/undo", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def look_back(
    request: Request,
    counter: TheCounter,
    number: Annotated[int, Query(alias="id", ge=0, le=_MOST)] = 0,
) -> Response:
    """Show what would go back, what goes, and what was changed since; nothing is changed.

    Raises:
        NotFoundError: When there is no such import.
    """
    if not number:
        return show_imports(request, counter)
    plan = preview_undo(counter.engine, number)
    values = {"plan": plan, "back": _first(plan.back), "removed": _first(plan.removed)}
    return show_page(request, "intake/undo.html", {**values, "shown": SHOWN})


@router.post("/import/undo", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def take_back(
    acting: ThePageActing, number: Annotated[int, Form(alias="id", ge=1, le=_MOST)]
) -> Response:
    """Take the import back; that can be taken back in turn.

    Raises:
        NotFoundError: When there is no such import.
    """
    undone = undo_import(acting.counter.engine, number, stamp=acting.stamp)
    if undone.import_id is None:
        return go_to("/imports", Notice(say("There was nothing left to take back.")))
    plan = undone.plan
    counts = {"number": number, "changed": len(plan.back), "removed": len(plan.removed)}
    told = say("Import {number} was taken back: {changed} changed, {removed} removed.", **counts)
    if plan.left:
        told = say(
            "Import {number} was taken back: {changed} changed, {removed} removed,"
            " {left} left as they are.",
            **counts,
            left=plan.left,
        )
    again = Undo("/import/undo", {"id": str(undone.import_id)})
    return go_to(page_with("/import/done", id=undone.import_id), Notice(told, again))


def _first(states: tuple[ChangedState, ...]) -> tuple[ChangedState, ...]:
    return states[:SHOWN]
