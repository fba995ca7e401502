"""The table of one container: the form for the next thing, and what was put in last."""

from __future__ import annotations

import secrets
from dataclasses import dataclass
from typing import Annotated

from fastapi import APIRouter, Query, Request, Response

from service.errors import NotFoundError
from service.records.record import PhotoRole
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.views.language.choices import list_hazards, list_sides, list_states
from service.web.views.pack.choose import show_choice
from service.web.views.pack.lying import load_lying
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)


@dataclass(frozen=True, slots=True)
class Next:
    """What the form holds before anything is typed: another side of a thing keeps its number."""

    layer: int = 0
    object_number: str = ""
    role: PhotoRole = PhotoRole.FRONT


@router.get("/pack/table", include_in_schema=False, dependencies=[needs(Role.PACK)])
def table(  # noqa: PLR0913 - one for each thing that an address may say
    *,
    request: Request,
    counter: TheCounter,
    container: Annotated[str, Query(max_length=500)] = "",
    layer: Annotated[int, Query(ge=0, le=1000)] = 0,
    object_number: Annotated[str, Query(alias="object", max_length=500)] = "",
    role: PhotoRole = PhotoRole.FRONT,
) -> Response:
    """Show the table of a container; without one, ask which."""
    wanted = Next(layer, object_number, role)
    return show_table(request, counter, container, wanted=wanted)


def show_table(
    request: Request,
    counter: Counter,
    container: str,
    *,
    wanted: Next = Next(),
    form: FilledForm | None = None,
) -> Response:
    """Show the table, with the form as it was filled in where something was wrong with it."""
    try:
        with counter.reading() as connection:
            lying = load_lying(connection, container)
    except NotFoundError:
        return show_choice(request, unknown=container)
    last = lying.lines[0].place.layer if lying.lines else 1
    filled = form or FilledForm(
        {
            "object_number": wanted.object_number,
            "layer": str(wanted.layer or last),
            "role": wanted.role.value,
        }
    )
    values = {
        "form": filled,
        "lying": lying,
        "key": secrets.token_urlsafe(18),
        "hazards": list_hazards(),
        "states": list_states(),
        "roles": list_sides(),
    }
    return show_page(request, "pack/table.html", values, status=filled.status)
