"""The line of those that wait: a task's row and its place in the line are kept together."""

from __future__ import annotations

import hashlib
import uuid
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime

from dbos import (
    DBOS,
    DBOSClient,
    DBOSPortableJSONSerializer,
    EnqueueOptions,
    WorkflowSerializationFormat,
)

from service.errors import NotFoundError
from service.jobs.locks import make_plain_engine
from service.jobs.requests import PrintRequest, Request, kind_of, write_request
from service.store.canonical import dump_json
from service.store.handles import Connection, Engine
from service.store.history import Stamp, begin_change
from service.store.kept.tasks import TaskState, add_task, finish_task, load_task
from service.store.open import writing

APPLICATION = "underlid"
LINE = "tasks"
WORKFLOW = "task"
VERSION = "1"
"""Raised only when a task begun by an older version could not be gone on with by the new one."""


@dataclass(frozen=True, slots=True)
class TaskLine:
    """The store, and the client that puts tasks in the line."""

    engine: Engine
    client: DBOSClient


@contextmanager
def open_line(engine: Engine) -> Iterator[TaskLine]:
    """Open the line for processes that ask for work and do none, and close it again."""
    DBOS.migrate(engine.url.render_as_string(hide_password=False))
    with make_plain_engine(engine) as plain, join_line(engine, plain) as line:
        yield line


@contextmanager
def join_line(engine: Engine, plain: Engine) -> Iterator[TaskLine]:
    """Join a line whose tables are there; `plain` is the engine that DBOS works with."""
    client = DBOSClient(
        system_database_engine=plain,
        application_name=APPLICATION,
        serializer=DBOSPortableJSONSerializer(),
    )
    try:
        yield TaskLine(engine, client)
    finally:
        client.destroy()


def submit(line: TaskLine, request: Request, *, stamp: Stamp, key: str = "") -> str:
    """Ask for work, and give the name of the task; see `submit_within`."""
    with writing(line.engine) as connection:
        return submit_within(connection, line, request, stamp=stamp, key=key)


def submit_within(
    connection: Connection, line: TaskLine, request: Request, *, stamp: Stamp, key: str = ""
) -> str:
    """Ask for work in the caller's transaction, and give the name of the task.

    The same request with the same key is one task, however often it is asked for; without a key
    each is a task of its own.

    Raises:
        UnknownCardKindError: When there is no such kind of card.
        UnknownStockError: When there is no such stock.
        StartPositionError: When the stock has no such position.
        UnstorableTextError: When a text of the request cannot be stored.
    """
    if isinstance(request, PrintRequest):
        request.to_options()
    kind, data = kind_of(request), write_request(request)
    task_id = _name_task(kind, dump_json(data), key)
    # Two that ask for the same at once stand in line from here on.
    begin_change(connection, stamp)
    if not _is_known(connection, task_id):
        add_task(connection, task_id, kind, data, stamp=stamp)
        options = EnqueueOptions(
            workflow_name=WORKFLOW,
            queue_name=LINE,
            workflow_id=task_id,
            app_version=VERSION,
            serialization_type=WorkflowSerializationFormat.PORTABLE,
        )
        line.client.enqueue_in_transaction(connection, options, task_id)
    return task_id


def cancel(engine: Engine, task_id: str, *, at: datetime) -> bool:
    """Cancel a task, and tell whether it was still open.

    From now on nothing of it is kept; the work itself ends at its next step. Photos that were
    brought before stay.

    Raises:
        NotFoundError: When there is no such task.
    """
    with writing(engine) as connection:
        load_task(connection, task_id)
        return finish_task(connection, task_id, TaskState.CANCELLED, {}, at=at)


def _name_task(kind: str, request: str, key: str) -> str:
    if not key:
        return f"{kind}-{uuid.uuid4().hex}"
    digest = hashlib.sha256(key.encode() + b"\0" + request.encode())
    return f"{kind}-{digest.hexdigest()[:32]}"


def _is_known(connection: Connection, task_id: str) -> bool:
    try:
        load_task(connection, task_id)
    except NotFoundError:
        return False
    return True
