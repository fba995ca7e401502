"""One container on the round: what to know before it is opened, and what each look gave."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Annotated

from fastapi import APIRouter, Query, Request, Response

from service.errors import NotFoundError
from service.handling.checks.due import DueCheck
from service.handling.checks.kinds import CHECKS, RESULT_WORDS, CheckKind
from service.keeping.rounds.look import Look, load_look
from service.languages.saying import say
from service.store.handles import Connection
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.checks.wish import RoundWish, TheWish
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

EMPTY_FORM = FilledForm()
Container = Annotated[str, Query(max_length=500)]


@dataclass(frozen=True, slots=True)
class Stop:
    """A stop on the way: the container, what is walked for, and how many stops are left."""

    look: Look
    wish: RoundWish
    today: date
    ahead: int


@router.get("/checks/look", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def look(
    request: Request, counter: TheCounter, wish: TheWish, container: Container = ""
) -> Response:
    """Show a container to look into; without a number, ask for it."""
    today = counter.now().date()
    number = container.strip()
    if not number:
        return show_which(request, wish, EMPTY_FORM)
    with counter.reading() as connection:
        try:
            stop = load_stop(connection, number, wish, today)
        except NotFoundError:
            unknown = FilledForm({"container": number}, {"container": say("No container has it.")})
            return show_which(request, wish, unknown)
    return show_stop(request, stop, EMPTY_FORM)


def load_stop(connection: Connection, number: str, wish: RoundWish, today: date) -> Stop:
    """Load where the reader stops, and how many stops are left besides.

    Raises:
        NotFoundError: When there is no container of this number.
    """
    loaded = load_look(connection, number)
    due = wish.list_due(connection, today)
    return Stop(loaded, wish, today, sum(one.stand.container_number != number for one in due))


def show_stop(request: Request, stop: Stop, form: FilledForm) -> Response:
    """Show the page of a container; what is due stands before what is not."""
    due, others = _part(stop.look.plan, stop.wish, stop.today)
    values = {
        "look": stop.look,
        "due": due,
        "others": others,
        "form": form,
        "wish": stop.wish,
        "today": stop.today,
        "ahead": stop.ahead,
        "checks": CHECKS,
        "result_words": RESULT_WORDS,
    }
    return show_page(request, "checks/look.html", values, status=form.status)


def show_which(request: Request, wish: RoundWish, form: FilledForm) -> Response:
    """Ask for the number of a container."""
    status = 404 if form.faults else 200
    return show_page(request, "checks/which.html", {"form": form, "wish": wish}, status=status)


def _part(
    plan: Sequence[DueCheck], wish: RoundWish, today: date
) -> tuple[list[DueCheck], list[DueCheck]]:
    """Part what is walked for from what may be looked at as well; weighing is never in between."""
    asked = {one.kind for one in plan if one.kind in wish.kinds and one.is_due(today)}
    asked = asked or {one.kind for one in plan if one.kind is not CheckKind.WEIGHT}
    return (
        [one for one in plan if one.kind in asked],
        [one for one in plan if one.kind not in asked],
    )
