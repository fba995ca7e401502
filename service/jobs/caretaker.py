"""Looks after the line: work of processes that are gone, work that broke off, work long done."""

from __future__ import annotations

import logging
import threading
from collections import defaultdict
from datetime import timedelta

from dbos import DBOSClient

from service.jobs.kinds import Clock
from service.jobs.line import LINE, TaskLine
from service.jobs.locks import hold_name
from service.jobs.results import tell_unforeseen
from service.store.handles import Engine
from service.store.kept.tasks import TaskState, finish_task
from service.store.open import writing

_LOG = logging.getLogger(__name__)

EVERY_SECONDS = 60.0
KEPT_DAYS = 7
"""How long the line remembers what was done; the rows of tasks stay."""
_MOST_AT_ONCE = 1_000
_BROKEN = ["ERROR", "CANCELLED", "MAX_RECOVERY_ATTEMPTS_EXCEEDED"]


def lock_name(slot: str) -> str:
    """Give the name of the lock that the one process of a slot holds while it lives."""
    return f"jobs-{slot}"


def look_after(line: TaskLine, slot: str, clock: Clock, stopping: threading.Event) -> None:
    """Look after the line every minute, until the process is to end."""
    while not stopping.is_set():
        try:
            take_over(line.client, line.engine, slot)
            tell_broken(line, clock)
            forget_done(line.client, clock)
        except Exception:  # noqa: BLE001 - the database may be away; in a minute it is tried again.
            _LOG.exception("The line of tasks could not be looked after.")
        stopping.wait(EVERY_SECONDS)


def take_over(client: DBOSClient, engine: Engine, slot: str) -> list[str]:
    """Put the work of other slots whose process is gone back in the line, and name it.

    Whoever gets the lock of a slot knows that its process is dead.
    """
    left: dict[str, list[str]] = defaultdict(list)
    for found in client.list_workflows(status="PENDING", load_input=False, load_output=False):
        if found.executor_id and found.executor_id != slot:
            left[found.executor_id].append(found.workflow_id)
    taken: list[str] = []
    for owner, names in left.items():
        with hold_name(engine, lock_name(owner)) as is_gone:
            if is_gone:
                client.resume_workflows(names, queue_name=LINE)
                taken += names
    return taken


def tell_broken(line: TaskLine, clock: Clock) -> None:
    """Finish the tasks whose work broke off in a way that it could not tell itself."""
    found = line.client.list_workflows(
        status=_BROKEN, limit=_MOST_AT_ONCE, load_input=False, load_output=False
    )
    for broken in found:
        _LOG.warning("Task %s broke off: %s", broken.workflow_id, broken.status)
        result = tell_unforeseen(broken.workflow_id, ())
        with writing(line.engine) as connection:
            finish_task(connection, broken.workflow_id, TaskState.FAILED, result, at=clock())
    line.client.delete_workflows([broken.workflow_id for broken in found])


def forget_done(client: DBOSClient, clock: Clock) -> int:
    """Take what was done some days ago out of the line, and say how much that was."""
    before = (clock() - timedelta(days=KEPT_DAYS)).isoformat()
    done = client.list_workflows(
        status="SUCCESS",
        completed_before=before,
        limit=_MOST_AT_ONCE,
        load_input=False,
        load_output=False,
    )
    client.delete_workflows([found.workflow_id for found in done])
    return len(done)
