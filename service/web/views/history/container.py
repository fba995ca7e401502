"""The history of one container, and any of its packings as it was."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Path, Query, Request, Response

from service.keeping.containers.history import tell_history
from service.records.record import PackingRecord
from service.store.handles import Connection
from service.store.load_records import load_container, load_objects
from service.store.packing.load import load_packing
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.history.deeds import show_deed
from service.web.views.shell.addresses import page_with
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

_AT_ONCE = 40
_BEYOND = 1_000_000_000


@router.get(
    "/history/container/{number:path}", include_in_schema=False, dependencies=[needs(Role.VIEW)]
)
def history(
    request: Request,
    number: Annotated[str, Path(max_length=500)],
    counter: TheCounter,
    before: Annotated[int, Query(ge=0, lt=_BEYOND)] = 0,
    revision: Annotated[int, Query(ge=0, lt=_BEYOND)] = 0,
) -> Response:
    """Tell what was done to a container; with a revision also show how it was packed then."""
    with counter.reading() as connection:
        record = load_container(connection, number)
        page = tell_history(connection, number, limit=_AT_ONCE, before=before)
        current = load_packing(connection, number)
        then = load_packing(connection, number, revision=revision) if revision else None
        titles = _titles(connection, then)
    older = page.next_before and page_with(request.url.path, before=page.next_before)
    values = {
        "number": number,
        "record": record,
        "changes": [(one, [show_deed(deed) for deed in one.deeds]) for one in page.changes],
        "next": older,
        "is_first": not before,
        "current": current,
        "then": then,
        "titles": titles,
    }
    return show_page(request, "history/container.html", values)


def _titles(connection: Connection, packing: PackingRecord | None) -> dict[str, str]:
    """Give the titles, as they are today, of what lay there then."""
    if packing is None:
        return {}
    numbers = sorted({place.object_number for place in packing.places})
    return {one.object_number: one.title for one in load_objects(connection, numbers)}
