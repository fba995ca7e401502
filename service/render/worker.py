"""A runner for child processes of our own, each under limits of time, processor and memory.

A hostile file or a run-away layout cannot be stopped from inside its own process, so such work is
done in children that can be killed. Children are started fresh (spawn, never fork: a fork copies
locks and open files), answer over a pipe, and are renewed because libraries keep memory. The
standard pools do not serve: `ProcessPoolExecutor` hangs when it renews a child with work queued,
and `multiprocessing.Pool` loses the task of a child that dies.
"""

from __future__ import annotations

import contextlib
import math
import multiprocessing
import os
import pickle
import signal
import sys
import time
import traceback
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from multiprocessing.connection import wait
from typing import TYPE_CHECKING, Self, TypeVar, cast

from service.errors import JobCrashedError, JobError, JobTimedOutError, ServiceError

if sys.platform != "win32":
    import resource

if TYPE_CHECKING:
    from multiprocessing.connection import Connection
    from multiprocessing.context import SpawnProcess

    _Pipe = Connection[object, object]

Argument = TypeVar("Argument")
Result = TypeVar("Result")

DEFAULT_MEMORY_BYTES = 1 << 30
DEFAULT_LIMIT_SECONDS = 60.0
# Tasks a child may be ahead of the result given next, so that finished results do not pile up.
_AHEAD = 8


class Workers:
    """Runs one function over many arguments in child processes; a context manager.

    The function is named over the pipe, so it must stand at the top level of a module. Children
    start when they are needed and stay for the next `run`; leaving the context ends them. Not for
    use by two threads at once.
    """

    def __init__(
        self,
        count: int,
        *,
        memory_bytes: int = DEFAULT_MEMORY_BYTES,
        tasks_per_process: int = 20,
        environment: Mapping[str, str] | None = None,
    ) -> None:
        """Set what binds each child: its address space, its tasks and its environment.

        `environment` is added to the child's own before it imports anything but this file.

        Raises:
            ValueError: When a number is below one.
        """
        if count < 1 or tasks_per_process < 1:
            message = "At least one worker and one task per process are needed."
            raise ValueError(message)
        self.count = count
        self._memory_bytes = memory_bytes
        self._tasks_per_process = tasks_per_process
        self._environment = dict(environment or {})
        self._idle: list[_Child] = []
        self._busy: list[_Child] = []

    def __enter__(self) -> Self:
        """Start nothing yet: children start with the first tasks."""
        return self

    def __exit__(self, *_reason: object) -> None:
        """End every child."""
        self._kill_busy()
        while self._idle:
            self._idle.pop().close()

    def run(
        self,
        function: Callable[[Argument], Result],
        arguments: Iterable[Argument],
        *,
        limit_seconds: float = DEFAULT_LIMIT_SECONDS,
        on_progress: Callable[[int], None] | None = None,
    ) -> Iterator[Result | ServiceError]:
        """Give each argument's result in order, or the error that took its place.

        A task over `limit_seconds` gives `JobTimedOutError`, a child that dies `JobCrashedError`,
        any other exception that is not ours a `JobError` with the traceback as a note; the other
        tasks go on. `on_progress` is told how many tasks have ended, whatever their order.
        """
        results: dict[int, Result | ServiceError] = {}
        waiting = enumerate(arguments)
        started = given = 0
        try:
            while True:
                while len(self._busy) < self.count and started - given < _AHEAD * self.count:
                    number, argument = next(waiting, (-1, None))
                    if number < 0:
                        break
                    self._start((function, argument, limit_seconds), number)
                    started += 1
                if started == given:
                    return
                for number, answer in self._collect(limit_seconds):
                    results[number] = cast("Result | ServiceError", answer)
                    if on_progress is not None:
                        on_progress(given + len(results))
                while given in results:
                    yield results.pop(given)
                    given += 1
        finally:
            self._kill_busy()

    def _start(self, task: tuple[object, object, float], number: int) -> None:
        message = pickle.dumps(task)
        child = self._free_child()
        child.number = number
        child.deadline_seconds = time.monotonic() + task[2]
        self._busy.append(child)
        # A child that died meanwhile is seen by `_collect`, which answers for its task.
        with contextlib.suppress(OSError):
            child.pipe.send_bytes(message)

    def _free_child(self) -> _Child:
        while self._idle:
            child = self._idle.pop()
            if child.tasks_left > 0 and child.process.is_alive():
                child.tasks_left -= 1
                return child
            child.close()
        return _start_child(self._environment, self._memory_bytes, self._tasks_per_process - 1)

    def _collect(self, limit_seconds: float) -> Iterator[tuple[int, object]]:
        """Wait until a child answers, dies or reaches its time, and give what came of it."""
        ends = [end for child in self._busy for end in (child.pipe, child.process.sentinel)]
        first_seconds = min((child.deadline_seconds for child in self._busy), default=0.0)
        wait(ends, timeout=max(0.0, first_seconds - time.monotonic()))
        for child in tuple(self._busy):
            for answer in child.answers(limit_seconds):
                self._busy.remove(child)
                self._idle.append(child)
                yield child.number, answer

    def _kill_busy(self) -> None:
        while self._busy:
            self._busy.pop().kill()


@dataclass(slots=True)
class _Child:
    """One child process, our end of its pipe, and the task in its hands."""

    process: SpawnProcess
    pipe: _Pipe
    tasks_left: int
    number: int = -1
    deadline_seconds: float = 0.0

    def answers(self, limit_seconds: float) -> tuple[object, ...]:
        """Give the one answer if there is one; an answer that came late still counts."""
        if self.pipe.poll():
            with contextlib.suppress(EOFError, OSError):
                return (self.pipe.recv(),)
            return (self._crash(),)
        if not self.process.is_alive():
            return (self._crash(),)
        if time.monotonic() >= self.deadline_seconds:
            self.kill()
            return (JobTimedOutError(seconds=limit_seconds),)
        return ()

    def _crash(self) -> JobCrashedError:
        # The pipe breaks a moment before the exit code is known.
        self.process.join(timeout=1.0)
        exit_code = self.process.exitcode
        self.kill()
        return JobCrashedError(exit_code=exit_code)

    def close(self) -> None:
        """End an idle child: it leaves by itself when its pipe closes."""
        self.pipe.close()
        self.process.join(timeout=1.0)
        self.kill()

    def kill(self) -> None:
        """End the child now, whatever it does."""
        self.pipe.close()
        self.process.kill()
        self.process.join()


def _start_child(environment: Mapping[str, str], memory_bytes: int, tasks_left: int) -> _Child:
    context = multiprocessing.get_context("spawn")
    ours, theirs = context.Pipe()
    process = context.Process(target=_serve, args=(theirs, environment, memory_bytes), daemon=True)
    process.start()
    theirs.close()
    return _Child(process, ours, tasks_left)


def _serve(pipe: _Pipe, environment: Mapping[str, str], memory_bytes: int) -> None:
    """Answer tasks until the parent closes the pipe or is gone; runs in the child."""
    os.environ.update(environment)  # noqa: TID251 - this sets what the parent handed in.
    # Ctrl-C reaches the whole group of processes; the parent decides what becomes of the work.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    if sys.platform != "win32":
        _set_limit(resource.RLIMIT_AS, memory_bytes)
    with contextlib.suppress(EOFError, OSError):
        while True:
            pipe.send_bytes(_answer(pipe.recv_bytes()))


def _answer(message: bytes) -> bytes:
    try:
        function, argument, limit_seconds = pickle.loads(message)  # noqa: S301 - our own pipe.
        _limit_processor(limit_seconds)
        return pickle.dumps(function(argument))
    except ServiceError as error:
        return pickle.dumps(error)
    except Exception as error:  # noqa: BLE001 - one bad task never stops the others.
        failure = JobError("The work failed with {error}.", error=repr(error))
        failure.add_note(traceback.format_exc())
        return pickle.dumps(failure)


def _limit_processor(limit_seconds: float) -> None:
    """Hold this task to its time even when the parent, whose clock comes first, is gone."""
    if sys.platform != "win32":
        _set_limit(resource.RLIMIT_CPU, math.ceil(time.process_time() + limit_seconds) + 1)


def _set_limit(kind: int, value: int) -> None:
    """Set a soft limit, within the hard one; systems that know no such limit go without."""
    if sys.platform != "win32":
        with contextlib.suppress(ValueError, OSError):
            _soft, hard = resource.getrlimit(kind)
            allowed = value if hard == resource.RLIM_INFINITY else min(value, hard)
            resource.setrlimit(kind, (allowed, hard))
