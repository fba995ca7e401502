from __future__ import annotations

import pytest
from sqlalchemy import Connection

from service.errors import NotFoundError
from service.store.kept.tasks import (
    TaskState,
    add_task,
    finish_task,
    list_tasks,
    load_task,
    set_progress,
)
from tests.store.made import LATER, MOMENT, STAMP


def test_a_task_goes_from_waiting_to_done_once(connection: Connection) -> None:
    """Progress is told while it runs; what came of it is written once and stays."""
    add_task(connection, "t-1", "print", {"kinds": ["lid-card"]}, stamp=STAMP)
    assert load_task(connection, "t-1").state is TaskState.WAITING
    set_progress(connection, "t-1", 3, 10)
    task = load_task(connection, "t-1")
    assert (task.state, task.done, task.of, task.stamp) == (TaskState.RUNNING, 3, 10, STAMP)
    assert finish_task(connection, "t-1", TaskState.DONE, {"run": 7}, at=LATER.at)
    assert not finish_task(connection, "t-1", TaskState.FAILED, {}, at=LATER.at)
    set_progress(connection, "t-1", 4, 10)
    done = load_task(connection, "t-1")
    assert (done.state, done.result, done.done) == (TaskState.DONE, {"run": 7}, 3)
    assert done.finished_at == LATER.at
    assert done.state.is_final


def test_tasks_are_listed_latest_first(connection: Connection) -> None:
    """What was asked for last stands at the top; an unknown name is told."""
    add_task(connection, "t-1", "print", {}, stamp=STAMP)
    add_task(connection, "t-2", "import", {"name": "export.csv"}, stamp=LATER)
    assert [task.task_id for task in list_tasks(connection)] == ["t-2", "t-1"]
    assert STAMP.at == MOMENT
    with pytest.raises(NotFoundError, match="task"):
        load_task(connection, "t-3")
