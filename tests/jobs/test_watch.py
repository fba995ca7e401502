"""Tests for the progress of a task."""

from __future__ import annotations

import threading

import pytest

from service.jobs.watch import LeftForLater, TaskOverError, Watch
from service.store.handles import Engine
from service.store.kept.tasks import TaskState, add_task, finish_task
from service.store.open import writing
from tests.jobs.made import find_task
from tests.store.made import LATER, STAMP


@pytest.fixture
def task(engine: Engine) -> str:
    """Give a task that waits."""
    with writing(engine) as connection:
        add_task(connection, "t-1", "print", {}, stamp=STAMP)
    return "t-1"


def test_progress_is_written_a_few_times_a_second(engine: Engine, task: str) -> None:
    """The first word is written, the thousand that follow at once are not."""
    watch = Watch(engine, task, threading.Event())
    for done in range(1_000):
        watch("fit", done, 1_000_000)
    found = find_task(engine, task)
    assert (found.state, found.of) == (TaskState.RUNNING, 1_000_000)
    assert found.done < 999


def test_work_that_nobody_wants_any_more_ends(engine: Engine, task: str) -> None:
    """Once a task is cancelled its work ends at the next word, and the row stays as it is."""
    with writing(engine) as connection:
        finish_task(connection, task, TaskState.CANCELLED, {}, at=LATER.at)
    with pytest.raises(TaskOverError):
        Watch(engine, task, threading.Event())("fit", 1, 2)
    assert find_task(engine, task).done == 0


def test_a_process_that_ends_leaves_its_work(engine: Engine, task: str) -> None:
    """Every word is heard then, and what is raised is taken for no failure."""
    stopping = threading.Event()
    watch = Watch(engine, task, stopping)
    watch("fit", 1, 2)
    stopping.set()
    with pytest.raises(LeftForLater):
        watch("fit", 2, 2)
    assert not issubclass(LeftForLater, Exception)
    assert find_task(engine, task).state is TaskState.RUNNING
