"""Tests for the line of those that wait."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor

import pytest

from service.errors import NotFoundError, UnknownStockError
from service.jobs.line import LINE, TaskLine, cancel, submit, submit_within
from service.jobs.requests import PrintRequest
from service.store.kept.tasks import TaskState, list_tasks
from service.store.open import reading, writing
from tests.jobs.made import LABELS, NOTHING, find_task
from tests.store.made import LATER, STAMP


def waiting(line: TaskLine) -> set[str]:
    """Name what waits in the line."""
    return {found.workflow_id for found in line.client.list_workflows(queue_name=LINE)}


def known(line: TaskLine) -> set[str]:
    """Name the tasks that have a row."""
    with reading(line.engine) as connection:
        return {task.task_id for task in list_tasks(connection)}


def test_the_row_and_the_place_come_together(line: TaskLine) -> None:
    """A task has both, with what was asked for and who asked."""
    task_id = submit(line, LABELS, stamp=STAMP)
    task = find_task(line.engine, task_id)
    assert waiting(line) == known(line) == {task_id}
    assert (task.kind, task.state, task.stamp) == ("print", TaskState.WAITING, STAMP)
    assert task.request == {"kinds": ["end-label"], "containers": ["B-042"]}


def test_the_row_and_the_place_go_together(line: TaskLine) -> None:
    """Where the caller's transaction fails there is neither."""

    def fail() -> None:
        with writing(line.engine) as connection:
            submit_within(connection, line, LABELS, stamp=STAMP)
            name = "x"
            raise NotFoundError(name, what="object")

    with pytest.raises(NotFoundError):
        fail()
    assert waiting(line) == known(line) == set()


def test_the_same_key_asks_once(line: TaskLine) -> None:
    """Sent again, or by two at once, it is one task; without a key each is one of its own."""
    with ThreadPoolExecutor(4) as pool:
        names = list(pool.map(lambda _: submit(line, LABELS, stamp=STAMP, key="k-1"), range(8)))
    assert len(set(names)) == 1
    assert waiting(line) == known(line) == set(names)
    assert submit(line, NOTHING, stamp=STAMP, key="k-1") not in names
    assert submit(line, LABELS, stamp=STAMP) != submit(line, LABELS, stamp=STAMP)
    assert len(known(line)) == 4


def test_what_cannot_be_done_is_not_taken(line: TaskLine) -> None:
    """A stock that does not exist is told to whoever asks, and nothing waits."""
    with pytest.raises(UnknownStockError):
        submit(line, PrintRequest(stock="A9"), stamp=STAMP)
    assert waiting(line) == known(line) == set()


def test_an_open_task_is_cancelled_once(line: TaskLine) -> None:
    """The row says so from then on; what there is not cannot be cancelled."""
    task_id = submit(line, LABELS, stamp=STAMP)
    assert cancel(line.engine, task_id, at=LATER.at)
    assert not cancel(line.engine, task_id, at=LATER.at)
    task = find_task(line.engine, task_id)
    assert (task.state, task.finished_at) == (TaskState.CANCELLED, LATER.at)
    with pytest.raises(NotFoundError):
        cancel(line.engine, "print-0", at=LATER.at)
