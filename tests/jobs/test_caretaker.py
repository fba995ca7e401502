"""Tests for looking after the line."""

from __future__ import annotations

import threading
import time
from datetime import timedelta
from pathlib import Path

import pytest

from service.jobs.caretaker import (
    KEPT_DAYS,
    forget_done,
    lock_name,
    look_after,
    take_over,
    tell_broken,
)
from service.jobs.line import TaskLine, submit
from service.jobs.locks import hold_name
from service.jobs.open import open_jobs
from service.keeping.desk import Desk
from service.store.kept.tasks import TaskState
from tests.jobs.made import LABELS, NOTHING, SETUP, await_end, await_state, find_task
from tests.jobs.made import working_elsewhere as elsewhere
from tests.store.made import LATER, STAMP

pytestmark = pytest.mark.slow


@pytest.mark.print
def test_the_work_of_a_dead_process_goes_back_in_the_line(line: TaskLine, tmp_path: Path) -> None:
    """While its process lives it is left alone; once that is killed another slot takes it."""
    with elsewhere(tmp_path, LABELS) as task_id:
        await_state(line.engine, task_id, TaskState.RUNNING)
        assert take_over(line.client, line.engine, "2") == []
    assert take_over(line.client, line.engine, "1") == []
    with hold_name(line.engine, lock_name("1")):
        assert take_over(line.client, line.engine, "2") == []
    assert take_over(line.client, line.engine, "2") == [task_id]
    (found,) = line.client.list_workflows(workflow_ids=[task_id])
    assert found.status == "ENQUEUED"


def test_work_that_broke_off_fails_its_task(line: TaskLine) -> None:
    """Where the line gave a task up, its row says so, and the line forgets it."""
    task_id = submit(line, LABELS, stamp=STAMP)
    line.client.cancel_workflow(task_id)
    tell_broken(line, SETUP.clock)
    task = find_task(line.engine, task_id)
    assert (task.state, task.result["mark"]) == (TaskState.FAILED, task_id)
    assert line.client.list_workflows() == []


def test_what_was_done_is_forgotten_after_some_days(desk: Desk) -> None:
    """The line forgets it; the row stays."""
    with open_jobs(desk, SETUP) as line:
        task_id = submit(line, NOTHING, stamp=STAMP)
        await_end(line.engine, task_id)
        while line.client.list_workflows()[0].status != "SUCCESS":
            time.sleep(0.02)
        done_at = line.client.list_workflows()[0].updated_at or 0
        ago = timedelta(days=KEPT_DAYS)
        moment = LATER.at.fromtimestamp(done_at / 1000, tz=LATER.at.tzinfo)
        assert forget_done(line.client, lambda: moment + ago - timedelta(minutes=1)) == 0
        assert forget_done(line.client, lambda: moment + ago + timedelta(minutes=1)) == 1
        assert line.client.list_workflows() == []
        assert find_task(line.engine, task_id).state is TaskState.FAILED


def test_trouble_does_not_end_the_caretaker(
    line: TaskLine, caplog: pytest.LogCaptureFixture
) -> None:
    """It is logged, and the next round comes."""
    stopping = threading.Event()

    def fail_and_stop() -> None:
        stopping.set()
        message = "The clock has stopped."
        raise RuntimeError(message)

    submitted = submit(line, LABELS, stamp=STAMP)
    line.client.cancel_workflow(submitted)
    look_after(line, "1", fail_and_stop, stopping)  # type: ignore[arg-type]
    assert "could not be looked after" in caplog.text
