"""Tests for doing tasks in this process, and for what happens when it ends."""

from __future__ import annotations

import sqlite3
import sys
import threading
import time
from contextlib import AbstractContextManager, closing
from dataclasses import replace
from pathlib import Path

import pytest

from service.errors import ConfigError
from service.jobs.line import cancel, open_line, submit
from service.jobs.open import JobsSetup, open_jobs
from service.keeping.desk import Desk
from service.store.backup import check_database
from service.store.kept.tasks import TaskState, list_tasks
from service.store.migrations.upgrade import upgrade_store
from service.store.open import STORE_FILE, open_url, reading, writing
from service.store.printed.runs import list_runs
from service.store.save_records import save_records
from tests.jobs.made import (
    LABELS,
    NOTHING,
    SETUP,
    await_end,
    await_state,
    find_task,
    shelve_export,
    working_elsewhere,
)
from tests.keeping.made import COLLECTION
from tests.store.made import LATER, STAMP, make_store
from tests.store.postgresql import find_programs, make_database, run_server

pytestmark = [pytest.mark.print, pytest.mark.slow]

_NETWORK = {"socket.bind", "socket.connect", "socket.getaddrinfo", "socket.sendto"}


class SlowTurn(AbstractContextManager[None]):
    """A workshop that takes a while to be free, and tells that somebody waits for it."""

    def __init__(self) -> None:
        """Begin when it is asked for."""
        self.begun = threading.Event()

    def __enter__(self) -> None:
        """Tell, and take a while."""
        self.begun.set()
        time.sleep(0.5)

    def __exit__(self, *_reason: object) -> None:
        """Leave nothing behind."""


def count_runs(desk: Desk) -> int:
    """Count the print runs that were kept."""
    with reading(desk.engine) as connection:
        return len(list_runs(connection))


def test_tasks_are_done_in_the_order_they_came(desk: Desk) -> None:
    """One after the other, each with what came of it; one that fails keeps nobody waiting."""
    with open_jobs(desk, SETUP) as line:
        bad = submit(line, NOTHING, stamp=STAMP)
        good = submit(line, shelve_export(desk.shelf), stamp=STAMP)
        assert await_end(desk.engine, good).state is TaskState.DONE
        assert find_task(desk.engine, bad).state is TaskState.FAILED
    with reading(desk.engine) as connection:
        assert {task.task_id for task in list_tasks(connection)} == {good, bad}


def test_a_task_waits_for_a_process_that_works(desk: Desk) -> None:
    """Asked for by one that does no work, it is done when one that does is there."""
    with open_line(desk.engine) as line:
        task_id = submit(line, NOTHING, stamp=STAMP)
    with open_jobs(desk, SETUP):
        await_end(desk.engine, task_id)


@pytest.mark.skipif(sys.platform == "win32", reason="it knows no SIGKILL")
def test_a_killed_print_is_begun_again_and_made_once(desk: Desk, tmp_path: Path) -> None:
    """SIGKILL in the middle: the next process of the slot goes on, and there is one run."""
    with working_elsewhere(tmp_path, LABELS) as task_id:
        await_state(desk.engine, task_id, TaskState.RUNNING)
    assert find_task(desk.engine, task_id).state is TaskState.RUNNING
    assert count_runs(desk) == 0
    with open_jobs(desk, SETUP):
        task = await_end(desk.engine, task_id)
    assert (task.state, count_runs(desk)) == (TaskState.DONE, 1)
    check_database(tmp_path / STORE_FILE)


def test_a_process_that_ends_well_leaves_its_work_for_later(desk: Desk) -> None:
    """The end does not wait for the work, nor does the work fail for it."""
    turn = SlowTurn()
    with open_jobs(desk, JobsSetup(SETUP.clock, turn=turn)) as line:
        task_id = submit(line, LABELS, stamp=STAMP)
        turn.begun.wait()
    assert (find_task(desk.engine, task_id).state, count_runs(desk)) == (TaskState.WAITING, 0)
    with open_jobs(desk, SETUP):
        task = await_end(desk.engine, task_id)
    assert (task.state, count_runs(desk)) == (TaskState.DONE, 1)


def test_a_task_is_cancelled_while_it_runs(desk: Desk) -> None:
    """Its row says so at once, no run comes of it, and the next task has its turn."""
    turn = SlowTurn()
    with open_jobs(desk, JobsSetup(SETUP.clock, turn=turn)) as line:
        task_id = submit(line, LABELS, stamp=STAMP)
        turn.begun.wait()
        assert cancel(desk.engine, task_id, at=LATER.at)
        await_end(desk.engine, submit(line, NOTHING, stamp=STAMP))
    assert find_task(desk.engine, task_id).state is TaskState.CANCELLED
    assert count_runs(desk) == 0


def test_a_second_process_is_told(desk: Desk, tmp_path: Path) -> None:
    """Another process has the slot: words at once, no waiting, and the other slot is free."""
    with working_elsewhere(tmp_path):
        with pytest.raises(ConfigError, match="another process"), open_jobs(desk, SETUP):
            pass
        with open_jobs(desk, JobsSetup(SETUP.clock, slot="2")):
            pass


def test_a_process_does_the_tasks_of_one_store(desk: Desk, tmp_path: Path) -> None:
    """A second one is refused in words, whatever its slot, and the first goes on."""
    other = replace(desk, engine=make_store(tmp_path / "other"))
    with open_jobs(desk, SETUP) as line:
        second = JobsSetup(SETUP.clock, slot="2")
        with pytest.raises(ConfigError, match="of a store already"), open_jobs(other, second):
            pass
        assert await_end(desk.engine, submit(line, NOTHING, stamp=STAMP)).state.is_final
    with open_jobs(other, second):
        pass
    other.engine.dispose()


@pytest.mark.parametrize("slot", ["", "../x", "a/1", "é"])
def test_a_slot_is_a_plain_name(slot: str) -> None:
    """It becomes part of the name of a file."""
    with pytest.raises(ConfigError):
        JobsSetup(SETUP.clock, slot=slot)


@pytest.fixture(scope="module")
def watched() -> list[str]:
    """Give a list that every use of the network is noted in."""
    seen: list[str] = []

    def note(event: str, arguments: tuple[object, ...]) -> None:
        if event in _NETWORK:
            seen.append(f"{event} {arguments!r}")

    # A hook stays for ever; this one only appends.
    sys.addaudithook(note)
    return seen


def test_nobody_is_told(desk: Desk, watched: list[str], capfd: pytest.CaptureFixture[str]) -> None:
    """Nothing listens, nothing is sent, no name is looked up, and standard error stays empty."""
    watched.clear()
    with open_jobs(desk, SETUP) as line:
        await_end(desk.engine, submit(line, NOTHING, stamp=STAMP))
    assert watched == []
    assert capfd.readouterr() == ("", "")


def test_nothing_is_pickled(desk: Desk, tmp_path: Path) -> None:
    """What the line keeps can be read by any version: JSON throughout."""
    with open_jobs(desk, SETUP) as line:
        await_end(desk.engine, submit(line, NOTHING, stamp=STAMP))
    with closing(sqlite3.connect(tmp_path / STORE_FILE)) as connection:
        kept = [
            found
            for table in ("workflow_status", "operation_outputs")
            for (found,) in connection.execute(f"SELECT serialization FROM {table}")  # noqa: S608
        ]
    assert set(kept) == {"portable_json"}


def test_the_store_stays_one_that_can_be_opened(desk: Desk, tmp_path: Path) -> None:
    """The tables of the line stand beside ours, and disturb neither upgrade nor check."""
    with open_jobs(desk, SETUP):
        pass
    upgrade_store(desk.engine)
    check_database(tmp_path / STORE_FILE)


@pytest.mark.postgresql
def test_the_same_on_postgresql(desk: Desk) -> None:
    """Done, left for later and taken up, with the line in a schema of its own."""
    programs = find_programs()
    if programs is None:
        pytest.skip("There is no initdb: install the package postgresql.")
    with run_server(programs) as url:
        engine = open_url(make_database(url, "jobs"))
        upgrade_store(engine)
        with writing(engine) as connection:
            save_records(connection, COLLECTION, stamp=STAMP)
        there = Desk(engine, desk.shelf, desk.workshop, desk.data_folder)
        with open_jobs(there, SETUP) as line:
            task_id = submit(line, LABELS, stamp=STAMP, key="k")
            assert submit(line, LABELS, stamp=STAMP, key="k") == task_id
            await_state(engine, task_id, TaskState.RUNNING)
        with open_jobs(there, SETUP):
            assert await_end(engine, task_id).state is TaskState.DONE
        assert count_runs(there) == 1
        engine.dispose()
