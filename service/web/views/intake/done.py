"""The page after an import: what was done or how far it is, the way back, and what comes next."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Query, Request, Response

from service.store.handles import Connection
from service.store.kept.imports import Import, load_import
from service.store.kept.tasks import Task, load_task
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

_MOST = 2**31 - 1
TaskName = Annotated[str, Query(max_length=100)]
KINDS = ("objects", "containers", "packings")


@router.get("/import/done", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def done(
    request: Request,
    counter: TheCounter,
    number: Annotated[int, Query(alias="id", ge=0, le=_MOST)] = 0,
    task: TaskName = "",
    photos: TaskName = "",
) -> Response:
    """Tell what an import did, or how far its tasks are.

    Raises:
        NotFoundError: When there is no such import, or no such task.
    """
    with counter.reading() as connection:
        tasks = [load_task(connection, name) for name in (task, photos) if name]
        found = _find(connection, number, tasks)
    values = {
        "one": found,
        "kinds": KINDS,
        "tasks": tasks,
        "is_open": any(not one.state.is_final for one in tasks),
        "here": f"{request.url.path}?{request.url.query}",
    }
    return show_page(request, "intake/done.html", values)


def _find(connection: Connection, number: int, tasks: list[Task]) -> Import | None:
    """Find the import that is asked for, or that a task has done."""
    done_by_task = (task.result.get("import_id") for task in tasks)
    known = number or next((one for one in done_by_task if isinstance(one, int)), 0)
    return load_import(connection, known) if known else None
