"""The page of one container."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Depends, Path, Request, Response

from service.cards.words import KIND_WORDS
from service.keeping.containers.cards import judge_cards
from service.keeping.containers.look import look_at
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.store.matching import tag_record
from service.web.views.containers.asked import NO_TROUBLE, Asked, Trouble, read_asked
from service.web.views.containers.cards import show_cards
from service.web.views.containers.contents import list_lost, show_layers
from service.web.views.containers.stretch import cut_stretch
from service.web.views.containers.strip import show_strip
from service.web.views.shell.page import show_page
from service.web.views.shell.weights import write_weight

router = APIRouter(route_class=GatedRoute)

ThisContainer = Annotated[str, Path(max_length=500)]


@router.get("/containers/{number:path}", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def container(
    request: Request,
    number: ThisContainer,
    counter: TheCounter,
    asked: Annotated[Asked, Depends(read_asked)],
) -> Response:
    """Show a container: what can hurt, what lies in it and where, and how its cards stand."""
    return show_container(request, counter, number, asked)


def show_container(
    request: Request, counter: Counter, number: str, asked: Asked, trouble: Trouble = NO_TROUBLE
) -> Response:
    """Show a container as it is now, with what stood in the way of a change, if anything did.

    Raises:
        NotFoundError: When there is none of that number.
    """
    today = counter.now().date()
    with counter.measuring() as ruler, counter.reading() as connection:
        look = look_at(connection, number, today=today)
        judged = judge_cards(connection, ruler, number)
    revision = look.packed.revision
    values = {
        "look": look,
        "number": number,
        "kind": KIND_WORDS[look.record.kind],
        "tag": tag_record(look.record),
        "weight": write_weight(look.record.gross),
        "stretch": cut_stretch(show_layers(look), asked),
        "lost": list_lost(look),
        "strip": show_strip(look),
        "cards": show_cards(judged, number, revision=revision, kind=asked.card, side=asked.side),
        "asked": asked,
        "here": asked.page(number),
        "trouble": trouble,
        "today": today,
    }
    status = 200 if trouble is NO_TROUBLE else trouble.status
    return show_page(request, "containers/page.html", values, status=status)
