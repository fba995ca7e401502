"""All containers, in natural order, a page at a time."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from fastapi import APIRouter, Query, Request, Response

from service.cards.words import count
from service.records.record import ContainerRecord
from service.store.handles import Connection
from service.store.lists.pages import list_containers
from service.store.packing.load import load_current
from service.store.people.role import Role
from service.store.today.note import load_differing
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.shell.addresses import page_with
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

_AT_ONCE = 60


@dataclass(frozen=True, slots=True)
class Line:
    """A container in the list: what it is, how much lies in it, how many cards are wrong."""

    record: ContainerRecord
    objects: str
    wrong_cards: int


@router.get("/containers", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def containers(
    request: Request, counter: TheCounter, after: Annotated[str, Query(max_length=2000)] = ""
) -> Response:
    """Show a page of the list."""
    with counter.reading() as connection:
        page = list_containers(connection, limit=_AT_ONCE, cursor=after)
        lines = _lines(connection, page.records)
    older = page.next_cursor and page_with("/containers", after=page.next_cursor)
    values = {"lines": lines, "is_first": not after, "next": older}
    return show_page(request, "containers/list.html", values)


def _lines(connection: Connection, records: tuple[ContainerRecord, ...]) -> list[Line]:
    packings = load_current(connection, [one.container_number for one in records])
    # As noted when the list was last computed: whoever opens the container sees it anew.
    wrong = [card.made.number for card in load_differing(connection)]
    return [
        Line(
            one,
            count(len({place.object_number for place in packing.places}), "object")
            if (packing := packings.get(one.container_number))
            else "",
            wrong.count(one.container_number),
        )
        for one in records
    ]
