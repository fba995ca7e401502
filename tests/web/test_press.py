from __future__ import annotations

import multiprocessing
import os
import signal
from pathlib import Path
from typing import cast

import pytest

from service.config import Settings
from service.errors import JobCrashedError, JobError, JobTimedOutError
from service.web.press import Press, Presses, open_presses
from service.web.replies.refusals import Refusal, RefusedError
from service.web.work import Done, Failed, Job
from tests.web.sent import ONE_BOX

CHECK = Job(ONE_BOX.read_bytes(), {})


def test_job_over_its_time_is_stopped(tmp_path: Path) -> None:
    """At its limit the process is ended, and nothing of it stays."""
    before = set(multiprocessing.active_children())
    press = Press(tmp_path, processes=1, limit_seconds=0.05)
    with pytest.raises(JobTimedOutError):
        press.run(CHECK)
    assert set(multiprocessing.active_children()) <= before


def test_press_that_died_is_replaced(tmp_path: Path) -> None:
    """A death is told as such, and the next job gets a fresh process."""
    before = set(multiprocessing.active_children())
    press = Press(tmp_path, processes=1, limit_seconds=50)
    try:
        assert isinstance(press.run(CHECK), Done)
        (process,) = set(multiprocessing.active_children()) - before
        assert process.pid is not None
        os.kill(process.pid, signal.SIGKILL)
        process.join()
        with pytest.raises(JobCrashedError):
            press.run(CHECK)
        assert isinstance(press.run(CHECK), Done)
    finally:
        press.close()


def test_presses_leave_nothing_behind(tmp_path: Path) -> None:
    """They are ended by a signal, and yet no folder of theirs stays."""
    with open_presses(Settings(data=tmp_path, processes=1)) as presses:
        assert isinstance(presses.run(CHECK), Done)
        assert len(list((tmp_path / "scratch").glob("*.lock"))) == 2
    assert list((tmp_path / "scratch").iterdir()) == []


def test_own_fault_is_an_answer(tmp_path: Path) -> None:
    """A fault in our own code comes back with its traceback as a note, and the press lives on."""
    with open_presses(Settings(data=tmp_path, processes=1)) as presses:
        broken = Job(ONE_BOX.read_bytes(), cast("dict[str, Path]", 7))
        answer = presses.run(broken)
        assert isinstance(answer, Failed)
        assert type(answer.error) is JobError
        assert "Traceback" in "".join(answer.error.__notes__)
        assert isinstance(presses.run(CHECK), Done)


def test_no_free_press_refuses() -> None:
    """Whoever finds no press in time is told to come again."""
    with pytest.raises(RefusedError) as refused:
        Presses([], patience_seconds=0.01).run(CHECK)
    assert refused.value.code is Refusal.BUSY
