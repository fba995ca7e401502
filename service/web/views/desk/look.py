"""Every sheet of a run before it is made, and what is noticed, with where and what to do."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from urllib.parse import quote

from fastapi import APIRouter, Request, Response

from service.errors import PlanTooLargeError
from service.jobs.kinds import look_up_options
from service.keeping.previews.layout import PlannedSheet, PositionState
from service.keeping.previews.plans import Plan, plan_run
from service.languages.saying import say_many
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.cards.wanted import PrintBody
from service.web.store.counter import Counter
from service.web.views.desk.form import Sent, read_body, text, texts
from service.web.views.language.telling import tell_error
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

AT_ONCE = 60
"""Sheets on one page: more are too many to look at, and the others are a button away."""
_DIGITS = 7
_NAMED = 12


@dataclass(frozen=True, slots=True)
class LookedAt:
    """A sheet, from 1, with its picture and the numbers on it in reading order."""

    file: str
    kind: str
    stock: str
    number: int
    of: int
    href: str
    on_it: str
    is_begun: bool


@router.post("/print/look", include_in_schema=False, dependencies=[needs(Role.PRINT)])
def look(request: Request, counter: TheCounter, sent: Sent) -> Response:
    """Show every sheet as it would be printed now; nothing is printed or remembered."""
    body = read_body(sent)
    first = text(sent, "from")
    start = int(first) if first.isascii() and first.isdigit() and len(first) < _DIGITS else 0
    try:
        plan, refused = _plan(counter, body), ""
    except PlanTooLargeError as error:
        plan, refused = None, tell_error(error)
    sheets = list(list_sheets(plan)) if plan else []
    values = {
        "sheets": sheets[start : start + AT_ONCE],
        "count": len(sheets),
        "start": start,
        "after": start + AT_ONCE if start + AT_ONCE < len(sheets) else 0,
        "findings": plan.findings if plan else (),
        "refused": refused,
        "wanted": text(sent, "wanted"),
        "gone": texts(sent, "gone"),
    }
    return show_page(request, "print/look.html", values)


def list_sheets(plan: Plan) -> Iterator[LookedAt]:
    """List the sheets of a plan in the order in which they are printed."""
    for planned in plan.files:
        file = planned.file
        at = f"/api/prints/preview/{plan.name}/files/{quote(file.name, safe='')}/sheets"
        for sheet in planned.sheets:
            yield LookedAt(
                file.name,
                file.kind.name,
                file.stock.name,
                sheet.number,
                len(planned.sheets),
                f"{at}/{sheet.number}",
                _name_cards(sheet),
                sheet.is_begun,
            )


def _plan(counter: Counter, body: PrintBody) -> Plan:
    """Plan the run on the bench, where previews are made.

    Raises:
        PlanTooLargeError: When it is more than anybody looks at.
        ServiceError: When nothing of it can be printed.
    """
    request = body.to_request(counter.data_folder)
    with counter.previewing() as desk:
        options = look_up_options(desk, request)
        return plan_run(desk, options, today=counter.now().date())


def _name_cards(sheet: PlannedSheet) -> str:
    filled = [one for one in sheet.positions if one.state is PositionState.FILLED and one.key]
    numbers = list(dict.fromkeys(one.key[0] for one in filled if one.key))
    more = len(numbers) - _NAMED
    named = ", ".join(numbers[:_NAMED])
    if more <= 0:
        return named
    return say_many("{named} and one more", "{named} and {num} more", more, named=named)
