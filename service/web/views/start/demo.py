"""The invented museum, taken into an empty store to try things out."""

from __future__ import annotations

from fastapi import APIRouter, Response

from service.keeping.taking_in import take_in
from service.languages.saying import say
from service.pipeline.ready import tell_nobody
from service.render.task import TEMPLATES
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.refusals import Refusal, RefusedError
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.reader import ThePageActing
from service.web.views.start.today import holds_nothing

router = APIRouter(route_class=GatedRoute)

DEMO = TEMPLATES.parent / "sample_records" / "port_merrow"


@router.post("/start/demo", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def bring_demo(acting: ThePageActing) -> Response:
    """Take the invented museum in, with its photos.

    Raises:
        RefusedError: When the store holds something already: the two would be mixed.
    """
    with acting.counter.working() as desk:
        with acting.counter.reading() as connection:
            is_empty = holds_nothing(connection)
        if not is_empty:
            raise RefusedError(Refusal.NOT_EMPTY, "The store is not empty.")
        take_in(desk, DEMO, stamp=acting.stamp, on_progress=tell_nobody)
    return go_to("/", Notice(say("The Port Merrow Museum is in. Everything in it is invented.")))
