"""Does one task: at most once, whatever happened to the process that began it."""

from __future__ import annotations

import logging
import secrets
import threading
from collections.abc import Callable, Mapping
from contextlib import AbstractContextManager
from dataclasses import dataclass

from service.errors import ServiceError, StoreBusyError
from service.jobs.kinds import Clock, Job, run_import, run_photos, run_print, run_spoiled
from service.jobs.results import tell_error, tell_unforeseen
from service.jobs.watch import LeftForLater, TaskOverError
from service.keeping.desk import Desk
from service.store.kept.tasks import TaskState, finish_task, load_task
from service.store.open import reading, writing

_LOG = logging.getLogger(__name__)

_RUNNERS: Mapping[str, Callable[[Job], None]] = {
    "print": run_print,
    "import": run_import,
    "photos": run_photos,
    "spoiled": run_spoiled,
}


@dataclass(frozen=True, slots=True)
class Bench:
    """Where tasks are done.

    Attributes:
        desk: The store, the shelf and a workshop.
        clock: Gives the moment.
        turn: Held while the workshop is in use, for it serves one at a time.
        stopping: Set when the process is to end.
    """

    desk: Desk
    clock: Clock
    turn: AbstractContextManager[object]
    stopping: threading.Event


def run_task(bench: Bench, task_id: str) -> None:
    """Do a task, and say in its row what came of it; one that is finished is left as it is.

    Raises:
        LeftForLater: When the process ends before the work does.
        StoreBusyError: When the store was locked for too long; it may be tried again.
    """
    with reading(bench.desk.engine) as connection:
        task = load_task(connection, task_id)
    if task.state.is_final:
        return
    job = Job(bench.desk, task, bench.clock, bench.stopping)
    try:
        _take_turn(bench, job)
    except TaskOverError:
        _LOG.info("Task %s was over before its work was.", task_id)
    except StoreBusyError:
        raise
    except Exception as error:
        # Where the process ends, its children die first, and the work fails for that alone.
        if bench.stopping.is_set():
            raise LeftForLater from error
        _fail(job, _tell(job, error))


def _take_turn(bench: Bench, job: Job) -> None:
    """Do the work when the workshop is free.

    Raises:
        LeftForLater: When the process is to end by then.
    """
    with bench.turn:
        if bench.stopping.is_set():
            raise LeftForLater
        _RUNNERS[job.task.kind](job)


def _tell(job: Job, error: Exception) -> dict[str, object]:
    """Tell what went wrong; where it is no error of ours, only its mark in the log."""
    if isinstance(error, ServiceError):
        return tell_error(error, job.noticed)
    mark = secrets.token_hex(4)
    _LOG.error("%s: task %s failed", mark, job.task.task_id, exc_info=error)
    return tell_unforeseen(mark, job.noticed)


def _fail(job: Job, result: Mapping[str, object]) -> None:
    with writing(job.desk.engine) as connection:
        finish_task(connection, job.task.task_id, TaskState.FAILED, result, at=job.clock())
