"""Opens the place where tasks are done, in this process, and takes up what was left undone."""

from __future__ import annotations

import logging
import threading
from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass, field

from dbos import DBOS, DBOSConfig, DBOSPortableJSONSerializer, WorkflowSerializationFormat

from service.errors import ConfigError, StoreBusyError
from service.jobs.caretaker import lock_name, look_after
from service.jobs.kinds import Clock
from service.jobs.line import APPLICATION, LINE, VERSION, WORKFLOW, TaskLine, join_line
from service.jobs.locks import hold_name, make_plain_engine
from service.jobs.work import Bench, run_task
from service.keeping.desk import Desk
from service.store.handles import Engine

_IN_USE = threading.Lock()
_POLL_SECONDS = 0.5
_STOP_SECONDS = 8.0
"""How long a task in hand is waited for when the process is to end."""
_ATTEMPTS = 4
_MOST_RESTARTS = 10
"""A task that was under way at so many ends of the process is given up."""


@dataclass(frozen=True, slots=True)
class JobsSetup:
    """How this process does tasks.

    Attributes:
        clock: Gives the moment.
        slot: The lasting name of this worker: one live process has it, and the next process of the
            same name goes on with what that one left. Small letters, digits and hyphens.
        turn: Held while the workshop of the desk is in use; a lock of the caller's own where
            somebody else works there, too.
    """

    clock: Clock
    slot: str = "1"
    turn: AbstractContextManager[object] = field(default_factory=threading.Lock)

    def __post_init__(self) -> None:
        """Refuse a name that cannot stand in a file name.

        Raises:
            ConfigError: When the slot holds anything but letters, digits and hyphens.
        """
        if not self.slot.replace("-", "").isalnum() or not self.slot.isascii():
            name = "slot"
            raise ConfigError(name, reason=f"{self.slot!r} is more than letters and digits")


@contextmanager
def open_jobs(desk: Desk, setup: JobsSetup) -> Iterator[TaskLine]:
    """Do tasks in threads of this process while the block lasts, one at a time.

    Nothing listens on the network and nobody is told of anything. When the block ends, the task in
    hand is left where it is and begun again at the next start.

    Raises:
        ConfigError: When another process that lives has the same slot, or this one does the tasks
            of a store already.
    """
    with _alone(), hold_name(desk.engine, lock_name(setup.slot)) as is_ours:
        if not is_ours:
            name = "slot"
            reason = f"another process does the tasks of this store as {setup.slot!r}"
            raise ConfigError(name, reason=reason)
        bench = Bench(desk, setup.clock, setup.turn, threading.Event())
        with (
            make_plain_engine(desk.engine) as plain,
            _launched(bench, setup.slot, plain),
            join_line(desk.engine, plain) as line,
            _looked_after(line, setup, bench.stopping),
        ):
            yield line


@contextmanager
def _alone() -> Iterator[None]:
    """Refuse a second store: DBOS keeps what it does in globals, and would serve the first.

    Raises:
        ConfigError: When tasks are done in this process already.
    """
    if not _IN_USE.acquire(blocking=False):
        name = "slot"
        raise ConfigError(name, reason="this process does the tasks of a store already")
    try:
        yield
    finally:
        _IN_USE.release()


@contextmanager
def _launched(bench: Bench, slot: str, plain: Engine) -> Iterator[None]:
    """Launch DBOS with this bench; there is one of it in a process."""
    _quieten()
    busy = _register(bench)
    DBOS(config=_configure(slot, plain))
    try:
        DBOS.launch()
        DBOS.register_queue(LINE, worker_concurrency=1, polling_interval_sec=_POLL_SECONDS)
        yield
    finally:
        bench.stopping.set()
        _wait(busy)
        DBOS.destroy(destroy_registry=True)


def _configure(slot: str, plain: Engine) -> DBOSConfig:
    """Say everything that could make DBOS talk, though silence is its default."""
    return DBOSConfig(
        name=APPLICATION,
        system_database_url=plain.url.render_as_string(hide_password=False),
        system_database_engine=plain,
        executor_id=slot,
        application_version=VERSION,
        # The default is pickle, which a later version may not read.
        serializer=DBOSPortableJSONSerializer(),
        # What it says at INFO advertises its maker.
        log_level="WARNING",
        enable_otlp=False,
        conductor_key=None,
    )


def _quieten() -> None:
    """Let DBOS log as this process does where nothing else is said: to what is standard error now.

    Left alone it keeps the standard error of its first start for ever, and writes in a form of its
    own.
    """
    log = logging.getLogger("dbos")
    log.propagate = False
    if not log.handlers and logging.lastResort is not None:
        log.addHandler(logging.lastResort)


def _register(bench: Bench) -> threading.Lock:
    """Register the one workflow there is, and give the lock it holds while it is under way."""
    busy = threading.Lock()

    @DBOS.step(
        name="work",
        retries_allowed=True,
        max_attempts=_ATTEMPTS,
        should_retry=lambda error: isinstance(error, StoreBusyError),
    )
    def work(task_id: str) -> None:
        run_task(bench, task_id)

    @DBOS.workflow(
        name=WORKFLOW,
        max_recovery_attempts=_MOST_RESTARTS,
        serialization_type=WorkflowSerializationFormat.PORTABLE,
    )
    def _do(task_id: str) -> None:
        with busy:
            work(task_id)

    return busy


def _wait(busy: threading.Lock) -> None:
    """Wait for the task in hand, which ends at its next word of progress, but not for ever."""
    if busy.acquire(timeout=_STOP_SECONDS):
        busy.release()


@contextmanager
def _looked_after(line: TaskLine, setup: JobsSetup, stopping: threading.Event) -> Iterator[None]:
    """Run the caretaker beside the work."""
    arguments = (line, setup.slot, setup.clock, stopping)
    caretaker = threading.Thread(target=look_after, args=arguments, name="caretaker", daemon=True)
    caretaker.start()
    try:
        yield
    finally:
        stopping.set()
        caretaker.join(_STOP_SECONDS)
