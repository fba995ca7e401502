"""What is to be checked, as one walks, and what was found and waits to be seen again."""

from __future__ import annotations

from datetime import date

from fastapi import APIRouter, Request, Response

from service.handling.checks.due import DueCheck
from service.handling.checks.kinds import CHECKS, LOOKED_AT, CheckResult
from service.keeping.rounds.due import DueContainer
from service.keeping.rounds.follow_ups import list_follow_ups
from service.keeping.rounds.way import list_places
from service.languages.saying import said, say, spoken
from service.store.lists.walk import load_walk
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.checks.wish import TheWish
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

WITHIN = ("0", "7", "30", "90")
"""How many days ahead one may look."""
_AT_ONCE = 60


@router.get("/checks", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def checks_due(request: Request, counter: TheCounter, wish: TheWish) -> Response:
    """List what is due; overdue first, each part as one walks."""
    today = counter.now().date()
    with counter.reading() as connection:
        due = wish.list_due_in_short(connection, today, most=_AT_ONCE)
        follow_ups = list_follow_ups(connection)
        places = list_places(load_walk(connection))
    overdue, others = _part(due.first, today)
    values = {
        "wish": wish,
        "form": FilledForm({"within": str(wish.within), "kind": wish.kind, "place": wish.place}),
        "parts": [("overdue", overdue), ("due", others)],
        "due_count": due.count,
        "shown_count": len(due.first),
        "overdue_count": due.overdue_count,
        "first": next(iter(due.first), None),
        "follow_ups": follow_ups,
        "choices": {
            "kinds": [(kind.value, said(CHECKS[kind].name)) for kind in CHECKS],
            "places": [(place, place) for place in places],
        },
        "within": WITHIN,
        "checks": CHECKS,
        "last_words": tell_last,
    }
    return show_page(request, "checks/due.html", values)


def tell_last(one: DueContainer) -> str:
    """Say when what is due was looked at last; which looks, where it is not all of them."""
    days: dict[str, list[str]] = {}
    for check in one.checks:
        days.setdefault(_tell_day(check), []).append(said(CHECKS[check.kind].name).lower())
    if len(days) == 1 and [check.kind for check in one.checks] == list(LOOKED_AT):
        return _begin(*days)
    return "; ".join(_begin(f"{', '.join(names)}: {day}") for day, names in days.items())


def _tell_day(check: DueCheck) -> str:
    if check.last is None:
        return say("never checked")
    day = spoken().write_day(check.last.checked_on)
    if check.last.result is CheckResult.FOUND:
        return say("found {day}", day=day)
    return say("checked {day}", day=day)


def _begin(words: str) -> str:
    return words[:1].upper() + words[1:]


def _part(
    due: tuple[DueContainer, ...], today: date
) -> tuple[list[DueContainer], list[DueContainer]]:
    overdue = [one for one in due if one.is_overdue(today)]
    return overdue, [one for one in due if not one.is_overdue(today)]
