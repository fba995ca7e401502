"""How far a task is, told as it goes: server-sent events (HTML Living Standard, section 9.2)."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from typing import Annotated

from fastapi import APIRouter, Depends
from fastapi.sse import EventSourceResponse, ServerSentEvent
from starlette.concurrency import run_in_threadpool

from service.store.kept.tasks import Task, load_task
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.store.tasks.shapes import show_task
from service.web.store.tasks.tasks import TaskId

router = APIRouter(route_class=GatedRoute)

EVERY_SECONDS = 0.5
_LONGEST_SECONDS = 25.0
"""Then the stream ends, so that none outlives its page for long; browsers come again."""
_AGAIN_MS = 1_000


def _load(counter: Counter, task_id: str) -> Task:
    with counter.reading() as connection:
        return load_task(connection, task_id)


def _known(task: TaskId, counter: TheCounter) -> str:
    """Refuse a task of no name before anything is told.

    Raises:
        NotFoundError: When there is none.
    """
    return _load(counter, task).task_id


@router.get(
    "/api/tasks/{task}/events", dependencies=[needs(Role.VIEW)], response_class=EventSourceResponse
)
async def task_events(
    task: Annotated[str, Depends(_known)], counter: TheCounter
) -> AsyncIterator[ServerSentEvent]:
    """Tell how far a task is whenever that changes, until it has ended."""
    told: Task | None = None
    for _ in range(int(_LONGEST_SECONDS / EVERY_SECONDS)):
        found = await run_in_threadpool(_load, counter, task)
        if found != told:
            told = found
            event = "end" if found.state.is_final else "progress"
            view = show_task(found).model_dump(mode="json")
            yield ServerSentEvent(data=view, event=event, retry=_AGAIN_MS)
        if found.state.is_final:
            return
        await asyncio.sleep(EVERY_SECONDS)
