"""Tests for doing one task."""

from __future__ import annotations

import logging
import threading
from contextlib import AbstractContextManager, nullcontext
from dataclasses import replace

import pytest

from service.errors import StoreBusyError
from service.jobs.requests import Request, kind_of, write_request
from service.jobs.watch import LeftForLater
from service.jobs.work import Bench, run_task
from service.keeping.desk import Desk
from service.store.kept.imports import list_imports
from service.store.kept.tasks import TaskState, add_task, finish_task
from service.store.open import reading, writing
from service.store.printed.runs import list_runs
from tests.jobs.made import LABELS, NOTHING, SETUP, find_task, shelve_export
from tests.store.made import LATER, STAMP


def set_up(desk: Desk, request: Request, turn: AbstractContextManager[object]) -> Bench:
    """Add a task, and give a bench to do it at."""
    with writing(desk.engine) as connection:
        add_task(connection, "t-1", kind_of(request), write_request(request), stamp=STAMP)
    return Bench(desk, SETUP.clock, turn, threading.Event())


@pytest.mark.print
def test_a_task_is_done_once(desk: Desk) -> None:
    """Begun again, as after a crash between the run and the note of the line, it does nothing."""
    bench = set_up(desk, LABELS, nullcontext())
    run_task(bench, "t-1")
    run_task(bench, "t-1")
    with reading(desk.engine) as connection:
        assert len(list_runs(connection)) == 1


def test_two_at_once_keep_one(desk: Desk) -> None:
    """A process that was only slow may go on beside its heir: the first to end is kept."""
    bench = set_up(desk, shelve_export(desk.shelf), _Meanwhile(desk))
    run_task(bench, "t-1")
    with reading(desk.engine) as connection:
        assert len(list_imports(connection)) == 1
    assert find_task(desk.engine, "t-1").state is TaskState.DONE


class _Meanwhile(AbstractContextManager[None]):
    """A turn in which somebody else does the same task first."""

    def __init__(self, desk: Desk) -> None:
        self._desk = desk

    def __enter__(self) -> None:
        heir = Bench(self._desk, SETUP.clock, nullcontext(), threading.Event())
        run_task(heir, "t-1")

    def __exit__(self, *_reason: object) -> None:
        """Leave nothing behind."""


def test_an_error_of_ours_is_told(desk: Desk) -> None:
    """Code, sentence and advice stand in the row."""
    run_task(set_up(desk, NOTHING, nullcontext()), "t-1")
    task = find_task(desk.engine, "t-1")
    assert (task.state, task.result["code"]) == (TaskState.FAILED, "nothing-to-print")
    assert task.finished_at == LATER.at


def test_what_was_noticed_before_an_error_is_told(desk: Desk) -> None:
    """The findings of an export are not lost where keeping its records fails."""
    bench = set_up(desk, shelve_export(desk.shelf), nullcontext())
    with writing(desk.engine) as connection:
        connection.exec_driver_sql(
            "CREATE TRIGGER fails BEFORE INSERT ON imports BEGIN SELECT RAISE(ABORT, 'x'); END"
        )
    run_task(bench, "t-1")
    task = find_task(desk.engine, "t-1")
    assert task.state is TaskState.FAILED
    assert "unreadable-weight" in str(task.result["findings"])


def test_what_nobody_foresaw_is_logged(desk: Desk, caplog: pytest.LogCaptureFixture) -> None:
    """The row has the mark under which the log tells more, and no inner words."""
    bench = set_up(desk, NOTHING, nullcontext())
    broken = replace(bench, turn=_Broken())
    with caplog.at_level(logging.ERROR):
        run_task(broken, "t-1")
    task = find_task(desk.engine, "t-1")
    assert task.state is TaskState.FAILED
    assert str(task.result["mark"]) in caplog.text
    assert "inner words" in caplog.text
    assert "inner words" not in str(task.result)


class _Broken(AbstractContextManager[None]):
    """A turn that never comes."""

    def __init__(self, error: Exception | None = None) -> None:
        self._error = error or RuntimeError("inner words")

    def __enter__(self) -> None:
        raise self._error

    def __exit__(self, *_reason: object) -> None:
        """Never reached."""


def test_a_busy_store_ends_nothing(desk: Desk) -> None:
    """It is for the line to try again."""
    bench = set_up(desk, NOTHING, _Broken(StoreBusyError("busy")))
    with pytest.raises(StoreBusyError):
        run_task(bench, "t-1")
    assert find_task(desk.engine, "t-1").state is TaskState.WAITING


@pytest.mark.parametrize("turn", [nullcontext(), _Broken()], ids=["before", "in the middle"])
def test_a_process_that_ends_fails_nothing(
    desk: Desk, turn: AbstractContextManager[object]
) -> None:
    """Its children die first: what fails for that is begun again at the next start."""
    bench = set_up(desk, NOTHING, turn)
    bench.stopping.set()
    with pytest.raises(LeftForLater):
        run_task(bench, "t-1")
    assert find_task(desk.engine, "t-1").state is TaskState.WAITING


def test_a_cancelled_task_is_not_begun(desk: Desk) -> None:
    """Its turn comes, and nothing happens."""
    bench = set_up(desk, NOTHING, _Broken())
    with writing(desk.engine) as connection:
        finish_task(connection, "t-1", TaskState.CANCELLED, {}, at=LATER.at)
    run_task(bench, "t-1")
    assert find_task(desk.engine, "t-1").state is TaskState.CANCELLED
