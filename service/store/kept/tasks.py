"""Long work: what was asked for, how far it is, and what came of it."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from sqlalchemy import Connection, Select, and_, insert, or_, select, update

from service.errors import NotFoundError
from service.store.canonical import dump_json
from service.store.history import Stamp, find_actor
from service.store.tables import actors, tasks


class TaskState(StrEnum):
    """How far a task is."""

    WAITING = "waiting"
    RUNNING = "running"
    DONE = "done"
    FAILED = "failed"
    CANCELLED = "cancelled"

    @property
    def is_final(self) -> bool:
        """Tell whether nothing more will come of it."""
        return self in _FINAL


_FINAL = (TaskState.DONE, TaskState.FAILED, TaskState.CANCELLED)


@dataclass(frozen=True, slots=True)
class Task:
    """One task; `done` and `of` count steps, `result` is empty until it is finished."""

    task_id: str
    kind: str
    request: Mapping[str, object]
    state: TaskState
    done: int
    of: int
    result: Mapping[str, object]
    stamp: Stamp
    finished_at: datetime | None


def add_task(
    connection: Connection, task_id: str, kind: str, request: Mapping[str, object], *, stamp: Stamp
) -> None:
    """Add a task that waits."""
    connection.execute(
        insert(tasks).values(
            id=task_id,
            kind=kind,
            request=dump_json(request),
            state=TaskState.WAITING.value,
            done=0,
            of=0,
            result="{}",
            actor_id=find_actor(connection, stamp.actor),
            at=stamp.at,
        )
    )


def load_task(connection: Connection, task_id: str) -> Task:
    """Load a task.

    Raises:
        NotFoundError: When there is none of that name.
    """
    for task in _read(connection, _query().where(tasks.c.id == task_id)):
        return task
    raise NotFoundError(task_id, what="task")


def list_tasks(
    connection: Connection, *, limit: int = 100, after: Task | None = None
) -> tuple[Task, ...]:
    """List tasks, the latest first; `after` is the one where the last page ended."""
    query = _query().order_by(tasks.c.at.desc(), tasks.c.id).limit(limit)
    if after is not None:
        at = after.stamp.at
        same = and_(tasks.c.at == at, tasks.c.id > after.task_id)
        query = query.where(or_(tasks.c.at < at, same))
    return _read(connection, query)


def set_progress(connection: Connection, task_id: str, done: int, of: int) -> None:
    """Say how far a task is; one that is finished stays as it is."""
    connection.execute(
        update(tasks)
        .where(tasks.c.id == task_id, tasks.c.state.not_in(_FINAL))
        .values(state=TaskState.RUNNING.value, done=done, of=of)
    )


def finish_task(
    connection: Connection,
    task_id: str,
    state: TaskState,
    result: Mapping[str, object],
    *,
    at: datetime,
) -> bool:
    """Finish a task, and tell whether it was still open: it is finished once."""
    changed = connection.execute(
        update(tasks)
        .where(tasks.c.id == task_id, tasks.c.state.not_in(_FINAL))
        .values(state=state.value, result=dump_json(result), finished_at=at)
    )
    return changed.rowcount == 1


def _query() -> Select[tuple[object, ...]]:
    return select(tasks, actors.c.name).join(actors, tasks.c.actor_id == actors.c.id)


def _read(connection: Connection, query: Select[tuple[object, ...]]) -> tuple[Task, ...]:
    return tuple(
        Task(
            row["id"],
            row["kind"],
            json.loads(row["request"]),
            TaskState(row["state"]),
            row["done"],
            row["of"],
            json.loads(row["result"]),
            Stamp(row["name"], row["at"]),
            row["finished_at"],
        )
        for row in connection.execute(query).mappings()
    )
