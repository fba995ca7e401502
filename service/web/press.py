"""The presses: processes that do one job at a time and can be stopped in the middle of it.

Laying out, drawing and proving a collection cannot be stopped from inside, and PDFium is not for
two threads of one process. So a press is a process of its own with a workshop of its own.
"""

from __future__ import annotations

import contextlib
import multiprocessing
import os
import queue
import signal
import sys
import traceback
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, cast

from service.config import Settings
from service.errors import JobCrashedError, JobError, JobTimedOutError
from service.jobs.scratch import open_scratch, sweep_scratch
from service.pipeline.ready import Workshop
from service.web.replies.refusals import Refusal, RefusedError
from service.web.work import Done, Failed, Job, do_job
from service.wiring import open_workshop

if TYPE_CHECKING:
    from multiprocessing.connection import Connection
    from multiprocessing.context import SpawnProcess

    _Pipe = Connection[object, object]

PRESSES = 2
"""Jobs under way at once; the others wait in line."""
LIMIT_SECONDS = 300.0
PATIENCE_SECONDS = 60.0
"""How long a job waits for a press before its sender is told to come again."""
_JOBS_PER_PROCESS = 50
"""Libraries keep memory, so a press is renewed after this many jobs."""


class Press:
    """One process that does jobs; started when needed, ended when it fails or is worn."""

    def __init__(self, data_folder: Path, *, processes: int, limit_seconds: float) -> None:
        """Say where thumbnails are kept, how many children draw, and how long a job may take."""
        self._data_folder = data_folder
        self._processes = processes
        self._limit_seconds = limit_seconds
        self._running: tuple[SpawnProcess, _Pipe] | None = None
        self._jobs_left = 0

    def run(self, job: Job) -> Done | Failed:
        """Do one job.

        Raises:
            JobTimedOutError: When it was stopped at its limit.
            JobCrashedError: When the process died.
        """
        if self._running is None or self._jobs_left == 0:
            self.close()
            self._running = self._start()
            self._jobs_left = _JOBS_PER_PROCESS
        self._jobs_left -= 1
        process, pipe = self._running
        try:
            pipe.send(job)
            if not pipe.poll(self._limit_seconds):
                self.close()
                raise JobTimedOutError(seconds=self._limit_seconds)
            answer = pipe.recv()
        except (EOFError, OSError):
            process.join(timeout=1.0)
            exit_code = process.exitcode
            self.close()
            raise JobCrashedError(exit_code=exit_code) from None
        return cast("Done | Failed", answer)

    def close(self) -> None:
        """End the process now, with those that draw for it."""
        if self._running is not None:
            process, pipe = self._running
            self._running = None
            pipe.close()
            _kill_group(process)
            process.join()

    def _start(self) -> tuple[SpawnProcess, _Pipe]:
        context = multiprocessing.get_context("spawn")
        ours, theirs = context.Pipe()
        # Not a daemon, since those may have no children; `close` ends it.
        process = context.Process(target=_serve, args=(theirs, self._data_folder, self._processes))
        process.start()
        theirs.close()
        return process, ours


class Presses:
    """Hands each job to a press that is free; for use by many threads."""

    def __init__(
        self,
        presses: Sequence[Press],
        *,
        patience_seconds: float,
        scratch_folder: Path | None = None,
    ) -> None:
        """Take the presses, how long a job waits for one, and where its photos stand meanwhile."""
        self.scratch_folder = scratch_folder
        self._free: queue.LifoQueue[Press] = queue.LifoQueue()
        self._patience_seconds = patience_seconds
        for press in presses:
            self._free.put(press)

    def run(self, job: Job) -> Done | Failed:
        """Do one job on the press that worked last, which is warm.

        Raises:
            RefusedError: When no press became free in time.
            JobError: When the job had to be stopped.
        """
        try:
            press = self._free.get(timeout=self._patience_seconds)
        except queue.Empty:
            raise RefusedError(Refusal.BUSY, "All presses are at work.") from None
        try:
            return press.run(job)
        finally:
            self._free.put(press)


@contextmanager
def open_presses(
    settings: Settings,
    *,
    limit_seconds: float = LIMIT_SECONDS,
    patience_seconds: float = PATIENCE_SECONDS,
) -> Iterator[Presses]:
    """Open the presses, which share the processes the settings allow, and end them again."""
    each = max(1, settings.processes // PRESSES)
    presses = [
        Press(settings.data, processes=each, limit_seconds=limit_seconds) for _ in range(PRESSES)
    ]
    with open_scratch(settings.data) as scratch:
        try:
            yield Presses(presses, patience_seconds=patience_seconds, scratch_folder=scratch)
        finally:
            for press in presses:
                press.close()
            # A press is ended with a signal that leaves it no time to tidy up.
            sweep_scratch(settings.data)


def _serve(pipe: _Pipe, data_folder: Path, processes: int) -> None:
    """Do jobs until the parent closes the pipe or is gone; runs in the press."""
    if sys.platform != "win32":
        os.setsid()  # A group of its own can be ended whole, and Ctrl-C does not reach it.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    with (
        contextlib.suppress(EOFError, OSError),
        open_workshop(data_folder, processes=processes) as workshop,
    ):
        while True:
            pipe.send(_answer(cast("Job", pipe.recv()), workshop))


def _answer(job: Job, workshop: Workshop) -> Done | Failed:
    try:
        return do_job(job, workshop)
    except Exception as error:  # noqa: BLE001 - one bad job never stops the press.
        failure = JobError("The work failed with {error}.", error=repr(error))
        failure.add_note(traceback.format_exc())
        return Failed(failure)


def _kill_group(process: SpawnProcess) -> None:
    """End a press and its children; one that has not yet made its group is ended alone."""
    if sys.platform != "win32" and process.pid is not None:
        with contextlib.suppress(ProcessLookupError, PermissionError):
            os.killpg(process.pid, signal.SIGKILL)
    process.kill()
