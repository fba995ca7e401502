"""The counter: the desk as many requests use it at once."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime

from service.jobs.line import TaskLine
from service.keeping.desk import Desk
from service.keeping.reprints import Remembered, ReprintList, list_reprints
from service.pages.ruler import Ruler
from service.pipeline.ready import Workshop
from service.store.handles import Connection
from service.store.open import reading, writing
from service.web.replies.refusals import Refusal, RefusedError

PATIENCE_SECONDS = 60.0
"""How long a request waits for the workshop before its sender is told to come again."""

Clock = Callable[[], datetime]


def read_clock() -> datetime:
    """Give the moment with the time zone of this machine, for dates are those of the place."""
    return datetime.fromtimestamp(time.time(), tz=UTC).astimezone()


@dataclass(frozen=True, slots=True)
class Backroom:
    """Where long work waits, the lock of the workshop, which its doer shares, and the bench.

    Without a bench previews wait for the workshop like everything else.
    """

    line: TaskLine
    turn: threading.Lock = field(default_factory=threading.Lock)
    bench: Workshop | None = None


class Counter:
    """Hands out what the desk holds: connections to all, workshop and ruler to one at a time.

    The ruler is another than the workshop's: a scan need not wait until a print run is done. So is
    the bench, where previews are drawn.
    """

    def __init__(
        self,
        desk: Desk,
        ruler: Ruler,
        backroom: Backroom,
        *,
        clock: Clock = read_clock,
        patience_seconds: float = PATIENCE_SECONDS,
    ) -> None:
        """Take the desk, a ruler of its own, the line of tasks, and the clock."""
        self.now = clock
        self.shelf = desk.shelf
        self.engine = desk.engine
        self.data_folder = desk.data_folder
        self.scratch_folder = desk.workshop.scratch_folder
        self.cache_folder = desk.workshop.cache_folder
        self.line = backroom.line
        self._desk = desk
        self._remembered = Remembered()
        self._ruler = ruler
        self._patience_seconds = patience_seconds
        self._printing = backroom.turn
        self._measuring = threading.Lock()
        bench = backroom.bench
        self._bench = desk if bench is None else replace(desk, workshop=bench)
        self._previewing = backroom.turn if bench is None else threading.Lock()

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """Give a connection that sees one state of the store."""
        with reading(self.engine) as connection:
            yield connection

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """Give a connection whose changes are kept together, or not at all."""
        with writing(self.engine) as connection:
            yield connection

    @contextmanager
    def measuring(self) -> Iterator[Ruler]:
        """Lend the ruler."""
        with self._measuring:
            yield self._ruler

    def list_reprints(self) -> ReprintList:
        """List the cards to swap; what was found before is not worked out again."""
        with self.measuring() as ruler:
            return list_reprints(self.engine, ruler, remembered=self._remembered)

    @contextmanager
    def working(self) -> Iterator[Desk]:
        """Lend the desk with its workshop, in which one thing at a time is made.

        Raises:
            RefusedError: When somebody else works there for too long.
        """
        with self._lent(self._printing, "The workshop is in use."):
            yield self._desk

    @contextmanager
    def previewing(self) -> Iterator[Desk]:
        """Lend the desk with the bench, on which pictures are made while the workshop prints.

        Raises:
            RefusedError: When somebody else works there for too long.
        """
        with self._lent(self._previewing, "Another preview is being made."):
            yield self._bench

    @contextmanager
    def _lent(self, turn: threading.Lock, words: str) -> Iterator[None]:
        """Hold a lock, but do not wait for it for ever.

        Raises:
            RefusedError: When it was not to be had in time.
        """
        if not turn.acquire(timeout=self._patience_seconds):
            raise RefusedError(Refusal.BUSY, words)
        try:
            yield
        finally:
            turn.release()
