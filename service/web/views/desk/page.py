"""The print desk: what can be printed, and how."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from fastapi import APIRouter, Depends, Request, Response

from service.store.kept.tasks import list_tasks
from service.store.kept.used_sheets import load_used_sheets
from service.store.people.role import Role
from service.store.printed.runs import list_runs, load_attached, load_card
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.views.desk.asked import (
    Asked,
    What,
    choose_containers,
    choose_objects,
    read_asked,
)
from service.web.views.desk.offer import Stop, offer_lacking, offer_printed, offer_wrong
from service.web.views.desk.settings import list_settings
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

MOST_STOPS = 120
"""More containers than this are printed by one button, and not ticked one by one."""
_RUNS_SHOWN = 5
_EMPTY = FilledForm()


@router.get("/print", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def desk(
    request: Request, counter: TheCounter, asked: Annotated[Asked, Depends(read_asked)]
) -> Response:
    """Show what can be printed, or the cards of one way to choose them."""
    return show_desk(request, counter, asked, _EMPTY)


def show_desk(request: Request, counter: Counter, asked: Asked, form: FilledForm) -> Response:
    """Show the desk with what was typed and what is wrong with it."""
    if asked.what is What.NOTHING:
        return show_page(request, "print/start.html", _gather_start(counter))
    values = {
        "asked": asked,
        "form": form,
        "settings": list_settings(counter.data_folder),
        **_GATHER[asked.what](counter, asked),
    }
    name = f"print/{_PAGES.get(asked.what, 'cards')}.html"
    return show_page(request, name, values, status=form.status)


def _gather_start(counter: Counter) -> Mapping[str, object]:
    listed = counter.list_reprints()
    with counter.reading() as connection:
        tasks = list_tasks(connection, limit=20)
        return {
            "wrong": len(listed.out_of_date),
            "wanted": sum(one.today is not None for one in listed.out_of_date),
            "lacking": sum(not one.is_made for one in listed.unattached),
            "waiting": sum(one.is_made for one in listed.unattached),
            "runs": list_runs(connection, limit=_RUNS_SHOWN),
            "tasks": [task for task in tasks if not task.state.is_final],
            "used_sheets": load_used_sheets(connection),
        }


def _gather_wrong(counter: Counter, _asked: Asked) -> Mapping[str, object]:
    return _stops(offer_wrong(counter.list_reprints().out_of_date))


def _gather_lacking(counter: Counter, _asked: Asked) -> Mapping[str, object]:
    lacking = counter.list_reprints().unattached
    with counter.reading() as connection:
        return _stops(offer_lacking(connection, lacking))


def _gather_card(counter: Counter, asked: Asked) -> Mapping[str, object]:
    """Gather the card that was lost, or the cards on a container to choose it from."""
    with counter.reading() as connection:
        if asked.card:
            cards = (load_card(connection, asked.card),)
            return _stops(offer_printed(connection, cards, ticked=True))
        on = load_attached(connection, list(asked.containers)) if asked.containers else ()
        stops = _stops(offer_printed(connection, on, ticked=False))
        return {**stops, "choice": choose_containers(connection, asked)}


def _gather_containers(counter: Counter, asked: Asked) -> Mapping[str, object]:
    with counter.reading() as connection:
        return {"choice": choose_containers(connection, asked)}


def _gather_objects(counter: Counter, asked: Asked) -> Mapping[str, object]:
    with counter.reading() as connection:
        return {"choice": choose_objects(connection, asked)}


def _gather_all(_counter: Counter, _asked: Asked) -> Mapping[str, object]:
    return {}


def _stops(stops: tuple[Stop, ...]) -> Mapping[str, object]:
    cards = sum(1 for stop in stops for one in stop.ticks if one.field and not one.is_made)
    return {"stops": stops[:MOST_STOPS], "more": len(stops) - MOST_STOPS, "cards": cards}


_GATHER = {
    What.REPRINTS: _gather_wrong,
    What.LACKING: _gather_lacking,
    What.CARD: _gather_card,
    What.CONTAINERS: _gather_containers,
    What.OBJECTS: _gather_objects,
    What.ALL: _gather_all,
}
_PAGES = {What.CONTAINERS: "containers", What.OBJECTS: "objects", What.ALL: "all"}
