"""What the tests of long work share: a clock, an export, a worker in a process of its own."""

from __future__ import annotations

import json
import multiprocessing
import os
import signal
import time
from collections.abc import Iterator
from contextlib import contextmanager
from multiprocessing.connection import Connection as Pipe
from pathlib import Path

from service.jobs.line import submit
from service.jobs.open import JobsSetup, open_jobs
from service.jobs.requests import ImportRequest, PrintRequest, Request, ShelvedFile
from service.keeping.desk import Desk
from service.store.handles import Engine
from service.store.kept.tasks import Task, TaskState, load_task
from service.store.open import open_folder, reading
from service.store.shelf.files import FileShelf, open_shelf
from service.wiring import open_workshop
from tests.keeping.made import BOX
from tests.store.made import LATER, STAMP

SETUP = JobsSetup(lambda: LATER.at)
LABELS = PrintRequest(kinds=("end-label",), containers=(BOX,))
NOTHING = PrintRequest(containers=("B-999",))
EXPORT = json.dumps({"objects": [{"object_number": "X.112", "title": "Buoy", "weight": "heavy"}]})


def shelve_export(shelf: FileShelf, text: str = EXPORT) -> ImportRequest:
    """Put an export with one unreadable cell on the shelf, and ask for its import."""
    stored = shelf.put(text.encode(), ".json")
    return ImportRequest((ShelvedFile("export.json", stored.sha256),))


def find_task(engine: Engine, task_id: str) -> Task:
    """Load a task in a transaction of its own."""
    with reading(engine) as connection:
        return load_task(connection, task_id)


def await_state(engine: Engine, task_id: str, *states: TaskState) -> Task:
    """Wait until a task is in one of some states."""
    while (task := find_task(engine, task_id)).state not in states:
        time.sleep(0.02)
    return task


def await_end(engine: Engine, task_id: str) -> Task:
    """Wait until nothing more will come of a task."""
    return await_state(engine, task_id, TaskState.DONE, TaskState.FAILED, TaskState.CANCELLED)


def work_elsewhere(folder: Path, request: Request | None, pipe: Pipe) -> None:
    """Do tasks on the store in a folder until killed; asks for one, and tells its name."""
    engine = open_folder(folder)
    with open_workshop(folder / "workshop", processes=1) as workshop:
        desk = Desk(engine, open_shelf(folder / "files", scratch=folder), workshop, folder)
        with open_jobs(desk, SETUP) as line:
            pipe.send(submit(line, request, stamp=STAMP) if request else "")
            time.sleep(3600)


@contextmanager
def working_elsewhere(folder: Path, request: Request | None = None) -> Iterator[str]:
    """Let another process do tasks and give what it was asked for; at the end it gets SIGKILL."""
    context = multiprocessing.get_context("spawn")
    ours, theirs = context.Pipe(duplex=False)
    child = context.Process(target=work_elsewhere, args=(folder, request, theirs))
    child.start()
    theirs.close()
    try:
        yield str(ours.recv())
    finally:
        os.kill(child.pid or 0, signal.SIGKILL)
        child.join()
        ours.close()
