from __future__ import annotations

import threading
from dataclasses import replace
from pathlib import Path

import pytest

from service.jobs.line import open_line
from service.keeping.desk import Desk
from service.pipeline.ready import Workshop
from service.store.shelf.files import open_shelf
from service.web.replies.refusals import RefusedError
from service.web.store.counter import Backroom, Counter, read_clock
from tests.store.made import make_store


def test_one_works_at_a_time(tmp_path: Path, workshop: Workshop) -> None:
    """Whoever waits too long for the workshop is told to come again; readers do not wait."""
    shelf = open_shelf(tmp_path / "files", scratch=tmp_path)
    desk = Desk(make_store(tmp_path), shelf, workshop, tmp_path)
    with open_line(desk.engine) as line:
        counter = Counter(desk, workshop.ruler, Backroom(line), patience_seconds=0.01)
        held, leave = threading.Event(), threading.Event()

        def work() -> None:
            with counter.working():
                held.set()
                leave.wait(10)

        worker = threading.Thread(target=work)
        worker.start()
        held.wait(10)
        with pytest.raises(RefusedError, match="in use"), counter.working():
            pass
        with counter.reading() as connection:
            assert not connection.closed
        leave.set()
        worker.join()
        with counter.working() as lent:
            assert lent is desk
    desk.engine.dispose()
    assert read_clock().tzinfo is not None


def test_previews_have_a_turn_of_their_own(tmp_path: Path, workshop: Workshop) -> None:
    """While a run prints a preview is made on the bench; without one it waits like the others."""
    shelf = open_shelf(tmp_path / "files", scratch=tmp_path)
    desk = Desk(make_store(tmp_path), shelf, workshop, tmp_path)
    bench = replace(workshop, scratch_folder=tmp_path / "bench")
    with open_line(desk.engine) as line:
        both = Counter(desk, workshop.ruler, Backroom(line, bench=bench), patience_seconds=0.01)
        with both.working(), both.previewing() as lent:
            assert lent.workshop is bench
            assert lent.engine is desk.engine
            with pytest.raises(RefusedError, match="preview"), both.previewing():
                pass
        one = Counter(desk, workshop.ruler, Backroom(line), patience_seconds=0.01)
        with one.working(), pytest.raises(RefusedError), one.previewing():
            pass
        with one.previewing() as lent:
            assert lent is desk
    desk.engine.dispose()
