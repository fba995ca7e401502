"""The cards of a run to put on, in walking order, ticked off while one walks."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Form, Query, Request, Response

from service.cards.kinds import find_kind
from service.errors import NotFoundError
from service.keeping.printing.attach import attach_card, attach_run, take_back
from service.keeping.printing.walk import plan_walk
from service.languages.saying import say
from service.store.people.role import Role
from service.store.printed.runs import list_runs, load_card
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.attach.done import tell_done
from service.web.views.attach.spans import read_spans
from service.web.views.desk.offer import name_old
from service.web.views.desk.walking import begin_walk, end_walk, read_walk
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

WALK = "/attach"
_RUNS_SHOWN = 12
_STOPS_SHOWN = 60
_Number = Annotated[int, Form(ge=1, lt=2**31)]


@router.get("/attach", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def walk(
    request: Request, counter: TheCounter, run: Annotated[int, Query(ge=0, lt=2**31)] = 0
) -> Response:
    """Show the walk that was begun, or the runs to walk with."""
    run_id = run or read_walk(request)
    with counter.reading() as connection:
        if run_id is None:
            runs = list_runs(connection, limit=_RUNS_SHOWN)
            return show_page(request, "attach/choose.html", {"runs": runs})
        stops = plan_walk(connection, run_id)
    left = [stop for stop in stops if stop.cards]
    values = {
        "run": run_id,
        "stops": left[:_STOPS_SHOWN],
        "later": max(0, len(left) - _STOPS_SHOWN),
        "left": sum(len(stop.cards) for stop in left),
        "done": sum(stop.done for stop in stops),
        "find_kind": find_kind,
        "name_old": name_old,
    }
    return show_page(request, "attach/walk.html", values)


@router.post("/attach/begin", include_in_schema=False, dependencies=[needs(Role.PRINT)])
def begin(counter: TheCounter, run: _Number) -> Response:
    """Begin to walk with the cards of a run; a cookie of this browser names it."""
    with counter.reading() as connection:
        plan_walk(connection, run)
    response = go_to(WALK)
    begin_walk(response, run)
    return response


@router.post("/attach/end", include_in_schema=False, dependencies=[needs(Role.PRINT)])
def end(request: Request) -> Response:
    """End the walk; what waits still waits."""
    run = read_walk(request)
    response = go_to(
        f"/run/{run}" if run else "/print", Notice(say("What is not on yet still waits."))
    )
    end_walk(response)
    return response


@router.post("/attach/card", include_in_schema=False, dependencies=[needs(Role.PRINT)])
def put_on(acting: ThePageActing, cards: Annotated[str, Form(max_length=2000)]) -> Response:
    """Mark cards as attached."""
    with acting.counter.writing() as connection:
        done = [attach_card(connection, card, stamp=acting.stamp) for card in read_spans(cards)]
    return tell_done(WALK, done)


@router.post("/attach/run", include_in_schema=False, dependencies=[needs(Role.PRINT)])
def put_all_on(acting: ThePageActing, run: _Number) -> Response:
    """Mark every card of a run as attached that waits still."""
    with acting.counter.writing() as connection:
        done = attach_run(connection, run, stamp=acting.stamp)
    return tell_done(f"/run/{run}", done)


@router.post("/attach/undo", include_in_schema=False, dependencies=[needs(Role.PRINT)])
def undo(
    acting: ThePageActing,
    cards: Annotated[str, Form(max_length=4000)],
    replaced: Annotated[str, Form(max_length=4000)] = "",
) -> Response:
    """Take attachments back: the cards wait again, and what they replaced is on again.

    Raises:
        NotFoundError: When none is named.
    """
    runs: list[int] = []
    with acting.counter.writing() as connection:
        earlier = {load_card(connection, card).made.key: card for card in read_spans(replaced)}
        for card in read_spans(cards):
            key = load_card(connection, card).made.key
            back = take_back(connection, card, replaced=earlier.get(key), stamp=acting.stamp)
            runs.append(back.run_id)
    if not runs:
        raise NotFoundError(cards, what="printed card")
    return go_to(f"/attach?run={runs[0]}", Notice(say("It was taken back: the cards wait again.")))
