from __future__ import annotations

import os
import pickle
import signal
import sys
import time
from pathlib import Path

import pytest

from service.errors import (
    JobCrashedError,
    JobError,
    JobTimedOutError,
    PictureError,
    ProofFailedError,
    ServiceError,
    StockError,
    TooManyRecordsError,
)
from service.render.worker import Workers

pytestmark = pytest.mark.slow


def _double(number: int) -> int:
    return 2 * number


def _sleep(seconds: float) -> str:
    time.sleep(seconds)
    return "awake"


def _leave(exit_code: int) -> int:
    if exit_code:
        os._exit(exit_code)
    return exit_code


def _take_signal(number: int) -> None:
    os.kill(os.getpid(), number)


def _process_id(_number: int) -> int:
    return os.getpid()


def _read_variable(name: str) -> str | None:
    return os.environ.get(name)  # noqa: TID251 - the child tells what it was given.


def _fail(kind: str) -> str:
    if kind == "ours":
        raise PictureError(kind, reason="the file is cut short")
    if kind == "theirs":
        raise ZeroDivisionError(kind)
    if kind == "exit":
        sys.exit(3)
    if kind == "unsendable":
        return lambda: None  # type: ignore[return-value]
    return kind


def _take_memory(size_bytes: int) -> int:
    return len(bytearray(size_bytes))


def _spin(_seconds: float) -> None:
    while True:
        pass


def _wait_for(folder: str) -> bool:
    """Wait until two tasks stand in the folder at one time."""
    Path(folder, str(os.getpid())).touch()
    until = time.monotonic() + 20
    while len(list(Path(folder).iterdir())) < 2 and time.monotonic() < until:
        time.sleep(0.01)
    return len(list(Path(folder).iterdir())) == 2


def test_results_keep_the_order_of_the_arguments() -> None:
    """Two children and renewal leave every result at its place."""
    with Workers(2, tasks_per_process=3) as workers:
        assert list(workers.run(_double, range(25))) == [2 * number for number in range(25)]


def test_no_arguments_start_no_process() -> None:
    """Nothing to do gives nothing and ends at once."""
    with Workers(2) as workers:
        assert list(workers.run(_double, [])) == []


def test_children_work_at_one_time(tmp_path: Path) -> None:
    """Two tasks that wait for each other both end."""
    with Workers(2) as workers:
        assert list(workers.run(_wait_for, [str(tmp_path)] * 2)) == [True, True]


def test_a_task_over_its_time_is_stopped_and_the_rest_go_on() -> None:
    """A task past the limit gives the time error and its neighbours their results."""
    with Workers(2) as workers:
        first, slow, last = workers.run(_sleep, [0.0, 300.0, 0.0], limit_seconds=1.0)
    assert (first, last) == ("awake", "awake")
    assert isinstance(slow, JobTimedOutError)
    assert slow.seconds == 1.0


def test_a_child_that_spins_is_stopped() -> None:
    """A task that never yields is ended from outside."""
    with Workers(1) as workers:
        (answer,) = workers.run(_spin, [0.0], limit_seconds=0.5)
    assert isinstance(answer, JobTimedOutError)


def test_a_dead_child_is_an_error_and_the_rest_go_on() -> None:
    """A child that leaves without an answer costs its own task only."""
    with Workers(1) as workers:
        answers = list(workers.run(_leave, [0, 7, 0]))
    assert answers[0] == answers[2] == 0
    assert isinstance(answers[1], JobCrashedError)
    assert answers[1].exit_code == 7


@pytest.mark.skipif(sys.platform == "win32", reason="signals end no process there")
def test_a_child_ended_by_a_signal_names_it() -> None:
    """A crash such as a segmentation fault is told by its negative exit code."""
    with Workers(1) as workers:
        (answer,) = workers.run(_take_signal, [signal.SIGSEGV])
    assert isinstance(answer, JobCrashedError)
    assert answer.exit_code == -signal.SIGSEGV


def test_errors_come_back_whole() -> None:
    """Our errors keep class and values; others become job errors with their traceback."""
    with Workers(1) as workers:
        ours, theirs, left, unsendable, good = workers.run(
            _fail, ["ours", "theirs", "exit", "unsendable", "good"]
        )
    assert isinstance(ours, PictureError)
    assert (ours.name, ours.reason) == ("ours", "the file is cut short")
    assert type(theirs) is JobError
    assert "ZeroDivisionError('theirs')" in str(theirs)
    assert "in _fail" in theirs.__notes__[0]
    assert isinstance(left, JobCrashedError)
    assert type(unsendable) is JobError
    assert good == "good"


@pytest.mark.skipif(sys.platform != "linux", reason="other systems do not hold the limit")
def test_memory_is_limited() -> None:
    """A task that asks for more than its memory fails and the next one works."""
    with Workers(1, memory_bytes=1 << 29) as workers:
        greedy, modest = workers.run(_take_memory, [1 << 30, 1 << 20])
    assert isinstance(greedy, JobError)
    assert "MemoryError" in str(greedy)
    assert modest == 1 << 20


def test_processes_are_renewed() -> None:
    """Each process serves the number of tasks it was given, over two runs as well."""
    with Workers(1, tasks_per_process=2) as workers:
        processes = [*workers.run(_process_id, range(3)), *workers.run(_process_id, range(3))]
    assert [processes.count(process) for process in dict.fromkeys(processes)] == [2, 2, 2]
    assert os.getpid() not in processes


def test_the_environment_reaches_the_child_only() -> None:
    """A variable that was handed in is seen by the child and not by us."""
    with Workers(1, environment={"SOURCE_DATE_EPOCH": "1"}) as workers:
        assert list(workers.run(_read_variable, ["SOURCE_DATE_EPOCH"])) == ["1"]
    assert _read_variable("SOURCE_DATE_EPOCH") is None


def test_progress_counts_every_task() -> None:
    """Progress rises by one a task up to the last."""
    told: list[int] = []
    with Workers(2) as workers:
        list(workers.run(_double, range(6), on_progress=told.append))
    assert told == [1, 2, 3, 4, 5, 6]


def test_large_arguments_and_results_pass() -> None:
    """Bytes far larger than a pipe holds go there and back."""
    data = bytes(range(256)) * (1 << 15)
    with Workers(2) as workers:
        assert list(workers.run(bytes.swapcase, [data, data])) == [data.swapcase()] * 2


def test_a_run_left_early_leaves_the_workers_usable() -> None:
    """Whoever stops reading stops the tasks in hand and can run others."""
    with Workers(2) as workers:
        answers = workers.run(_sleep, [0.0, 300.0])
        assert next(answers) == "awake"
        answers.close()  # type: ignore[attr-defined]
        assert list(workers.run(_double, [21])) == [42]


def test_an_idle_child_that_died_costs_no_task() -> None:
    """A child lost between two runs is replaced before it is given anything."""
    with Workers(1) as workers:
        (process,) = workers.run(_process_id, [0])
        assert isinstance(process, int)
        os.kill(process, signal.SIGTERM)
        time.sleep(0.3)
        assert list(workers.run(_double, [21])) == [42]


def test_leaving_ends_every_child() -> None:
    """No child outlives the context."""
    with Workers(2) as workers:
        processes = list(workers.run(_process_id, range(4)))
    for process in processes:
        assert isinstance(process, int)
        with pytest.raises(ProcessLookupError):
            os.kill(process, 0)


def test_nonsense_numbers_are_refused() -> None:
    """Misuse by a programmer is a ValueError."""
    with pytest.raises(ValueError, match="At least one"):
        Workers(0)


@pytest.mark.parametrize(
    "error",
    [
        PictureError("cat.jpg", reason="the file is cut short"),
        JobTimedOutError(seconds=3.0),
        JobCrashedError(exit_code=None),
        TooManyRecordsError("a.csv", count=3, limit=2),
        StockError("A4", measure="pitch", reason="is wrong"),
        ProofFailedError(["page 1", "page 2"]),
        ServiceError("bare"),
    ],
    ids=lambda error: type(error).__name__,
)
def test_errors_survive_pickling(error: ServiceError) -> None:
    """Class, message and every value of an error are the same on the other side of a pipe."""
    error.add_note("a note")
    copy = pickle.loads(pickle.dumps(error))  # noqa: S301 - made on the line itself.
    assert type(copy) is type(error)
    assert str(copy) == str(error)
    assert copy.__dict__ == error.__dict__
