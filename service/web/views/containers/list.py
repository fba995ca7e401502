"""All containers, a page at a time: those that are asked for, by number or as one walks."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from typing import Annotated

from fastapi import APIRouter, Depends, Query, Request, Response

from service.keeping.refresh import refresh_today
from service.records.record import ContainerRecord
from service.store.handles import Connection
from service.store.lists.chosen import Choice, choose_containers, count_wrong
from service.store.packing.load import load_current
from service.store.people.role import Role
from service.store.today.stale import CARDS, count_stale
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.views.shell.addresses import page_with
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

_AT_ONCE = 60
_COMPARED_AT_ONCE = 300
STATES = ("swap", "empty")


@dataclass(frozen=True, slots=True)
class Line:
    """A container in the list: what it is, how much lies in it, how many cards are wrong."""

    record: ContainerRecord
    objects: int
    wrong_cards: int


@dataclass(frozen=True, slots=True)
class Filters:
    """What of the list is asked for, as it stands in the address."""

    q: str
    state: str
    order: str

    @property
    def choice(self) -> Choice:
        """The same as the store understands it."""
        return Choice(
            self.q,
            is_empty=self.state == "empty",
            is_wrong=self.state == "swap",
            is_walk=self.order == "walk",
        )

    def page(self, after: str = "") -> str:
        """Give the address of a page of the list."""
        return page_with("/containers", q=self.q, state=self.state, order=self.order, after=after)


def _filters(
    q: Annotated[str, Query(max_length=500)] = "",
    state: Annotated[str, Query(max_length=20)] = "",
    order: Annotated[str, Query(max_length=20)] = "",
) -> Filters:
    return Filters(
        " ".join(q.split()), state if state in STATES else "", order if order == "walk" else ""
    )


@router.get("/containers", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def containers(
    request: Request,
    counter: TheCounter,
    filters: Annotated[Filters, Depends(_filters)],
    after: Annotated[str, Query(max_length=2000)] = "",
) -> Response:
    """Show a page of the list."""
    uncompared = _compare_first(counter) if filters.choice.is_wrong else 0
    with counter.reading() as connection:
        page = choose_containers(connection, filters.choice, limit=_AT_ONCE, cursor=after)
        lines = _lines(connection, page.records)
    if filters.order:
        stops = groupby(lines, lambda line: " / ".join(line.record.location))
        groups = [(place, list(some)) for place, some in stops]
    else:
        groups = [("", lines)] if lines else []
    values = {
        "groups": groups,
        "filters": filters,
        "is_first": not after,
        "uncompared": uncompared,
        "next": page.next_cursor and filters.page(page.next_cursor),
    }
    return show_page(request, "containers/list.html", values)


def _compare_first(counter: Counter) -> int:
    """Compare the cards of what changed with the records, and give how many are too many for it."""
    with counter.reading() as connection:
        stale = count_stale(connection, CARDS)
    if stale > _COMPARED_AT_ONCE:
        return stale
    with counter.measuring() as ruler:
        refresh_today(counter.engine, ruler)
    return 0


def _lines(connection: Connection, records: tuple[ContainerRecord, ...]) -> list[Line]:
    numbers = [one.container_number for one in records]
    packings = load_current(connection, numbers)
    # As noted when cards were last compared: whoever opens the container sees it anew.
    wrong = count_wrong(connection, numbers)
    return [
        Line(
            one,
            len({place.object_number for place in packing.places})
            if (packing := packings.get(one.container_number))
            else 0,
            wrong.get(one.container_number, 0),
        )
        for one in records
    ]
