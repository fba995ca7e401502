"""The shapes of long work."""

from __future__ import annotations

from datetime import datetime

from pydantic import BaseModel, Field

from service.jobs.results import leave_parts
from service.store.kept.tasks import Task, TaskState


class TaskView(BaseModel):
    """A task: `done` of `of` steps are behind it; `result` is empty until it has ended.

    A task that failed tells `code`, `message` and `advice` there; each tells its `findings`.
    """

    task_id: str
    kind: str
    state: TaskState
    done: int
    of: int
    result: dict[str, object] = Field(description="What came of it, by the kind of task.")
    by: str
    at: datetime
    finished_at: datetime | None


class TaskPage(BaseModel):
    """Tasks, the latest first."""

    tasks: list[TaskView]


def show_task(task: Task) -> TaskView:
    """Show a task; what was asked for may hold many numbers and is left out."""
    return TaskView(
        task_id=task.task_id,
        kind=task.kind,
        state=task.state,
        done=task.done,
        of=task.of,
        result=leave_parts(task.result),
        by=task.stamp.actor,
        at=task.stamp.at,
        finished_at=task.finished_at,
    )
