"""The latest tasks, and one of them with its progress and result."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from fastapi import APIRouter, Form, Path, Query, Request, Response

from service.jobs.line import cancel
from service.jobs.results import say_again
from service.languages.saying import say
from service.store.kept.tasks import Task, list_tasks, load_task
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

_AT_ONCE = 30
_FINDINGS_SHOWN = 60
_TaskId = Annotated[str, Path(max_length=100)]


@router.get("/tasks", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def tasks(
    request: Request, counter: TheCounter, after: Annotated[str, Query(max_length=100)] = ""
) -> Response:
    """Show the latest tasks."""
    with counter.reading() as connection:
        last = load_task(connection, after) if after else None
        found = list_tasks(connection, limit=_AT_ONCE + 1, after=last)
    shown = found[:_AT_ONCE]
    older = shown[-1].task_id if len(found) > len(shown) else ""
    return show_page(request, "tasks/list.html", {"tasks": shown, "older": older})


@router.get("/tasks/{task}", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def task_page(request: Request, task: _TaskId, counter: TheCounter) -> Response:
    """Show how far a task is, or what came of it."""
    with counter.reading() as connection:
        found = load_task(connection, task)
    return show_page(request, "tasks/task.html", {"task": found, **_tell(found)})


@router.post("/tasks/cancel", include_in_schema=False, dependencies=[needs(Role.PACK)])
def cancel_task(acting: ThePageActing, task: Annotated[str, Form(max_length=100)]) -> Response:
    """End a task; nothing more of it is kept."""
    was_open = cancel(acting.counter.engine, task, at=acting.stamp.at)
    words = (
        say("It was stopped. Nothing of it was kept.") if was_open else say("It had ended already.")
    )
    return go_to(f"/tasks/{task}", Notice(words))


def _tell(task: Task) -> Mapping[str, object]:
    """Take the result apart; each kind of task tells what is its own."""
    findings = task.result.get("findings", [])
    shown = list(findings)[:_FINDINGS_SHOWN] if isinstance(findings, list) else []
    left_out = task.result.get("findings_left_out", 0)
    more = len(findings) - len(shown) if isinstance(findings, list) else 0
    return {
        "findings": [say_again(one) for one in shown],
        "more": more + (left_out if isinstance(left_out, int) else 0),
        "result": say_again(task.result) if "message" in task.result else dict(task.result),
    }
