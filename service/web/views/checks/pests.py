"""What pests ask for: the container set apart, and a look at what stands beside it."""

from __future__ import annotations

from fastapi import APIRouter, Request, Response

from service.errors import NotFoundError
from service.keeping.rounds.look import load_look
from service.keeping.rounds.note import propose
from service.languages.saying import say
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.checks.look import EMPTY_FORM, Container, show_which
from service.web.views.checks.wish import TheWish
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)


@router.get("/checks/pests", include_in_schema=False, dependencies=[needs(Role.PACK)])
def pests(
    request: Request,
    counter: TheCounter,
    wish: TheWish,
    container: Container = "",
    then: Container = "",
) -> Response:
    """Show what to do about a container with pests; without a number, ask for it."""
    number = container.strip()
    if not number:
        return show_which(request, wish, EMPTY_FORM)
    with counter.reading() as connection:
        try:
            proposal = propose(connection, number)
        except NotFoundError:
            unknown = FilledForm({"container": number}, {"container": say("No container has it.")})
            return show_which(request, wish, unknown)
        loaded = load_look(connection, number)
    values = {"proposal": proposal, "look": loaded, "wish": wish, "then": then}
    return show_page(request, "checks/pests.html", values)
