"""Tells a task how far its work is, and ends work that is no longer wanted."""

from __future__ import annotations

import threading
import time
from contextlib import suppress

from service.errors import StoreBusyError
from service.store.handles import Engine
from service.store.kept.tasks import load_task, set_progress
from service.store.open import writing

EVERY_SECONDS = 0.5
"""Between two words to the store: each is a write, and a write is brought to the disk."""


class TaskOverError(Exception):
    """Raised when the task was cancelled, or done by another process: nothing more is kept."""


class LeftForLater(BaseException):
    """Leaves the work as it is, to be begun again when the service starts the next time.

    No `Exception`, for neither we nor DBOS may take it for the end of the task.
    """


class Watch:
    """Stands where the work tells its progress."""

    def __init__(self, engine: Engine, task_id: str, stopping: threading.Event) -> None:
        """Watch one task; `stopping` is set when the process is to end."""
        self._engine = engine
        self._task_id = task_id
        self._stopping = stopping
        self._next_seconds = 0.0

    def __call__(self, _step: str, done: int, of: int) -> None:
        """Take what the work tells; a few times a second it is written down.

        Raises:
            LeftForLater: When the process is to end.
            TaskOverError: When the task is finished already, most likely cancelled.
        """
        if self._stopping.is_set():
            raise LeftForLater
        now_seconds = time.monotonic()
        if now_seconds >= self._next_seconds:
            self._next_seconds = now_seconds + EVERY_SECONDS
            # A store that is busy misses one word of progress; the work goes on.
            with suppress(StoreBusyError):
                self._tell(done, of)

    def _tell(self, done: int, of: int) -> None:
        """Write the progress down.

        Raises:
            TaskOverError: When the task is finished already.
        """
        with writing(self._engine) as connection:
            set_progress(connection, self._task_id, done, of)
            if load_task(connection, self._task_id).state.is_final:
                raise TaskOverError
