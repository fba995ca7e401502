"""Paths of long work: a reply comes at once, the work goes on whatever becomes of the process."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping
from pathlib import Path as FilePath
from pathlib import PurePosixPath
from typing import Annotated

from fastapi import APIRouter, File, Path, Response

from service.jobs.line import cancel, submit_within
from service.jobs.requests import (
    ImportRequest,
    PhotosRequest,
    PrintRequest,
    Request,
    ShelvedFile,
)
from service.keeping.printing.printers_file import name_printer
from service.keeping.reprints import name_cards
from service.store.handles import Connection
from service.store.kept.mappings import load_mappings
from service.store.kept.tasks import list_tasks, load_task
from service.store.people.role import Role
from service.store.shelf.files import FileShelf
from service.web.access.gate import GatedRoute, needs
from service.web.access.porter import TheReader
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import Asked, TheActing, TheAsked, TheCounter
from service.web.store.cards.wanted import PrintBody
from service.web.store.intake.import_shapes import ImportForm
from service.web.store.intake.imports import receive
from service.web.store.intake.photos import NAME, PhotosForm, pack_photos
from service.web.store.once import Made, make_once
from service.web.store.paging import ThePaging
from service.web.store.tasks.shapes import TaskPage, TaskView, show_task

router = APIRouter(route_class=GatedRoute)

_ACCEPTED = 202
TaskId = Annotated[str, Path(max_length=100, examples=["print-0"])]


@router.get("/api/tasks", dependencies=[needs(Role.VIEW)])
def tasks(counter: TheCounter, paging: ThePaging) -> TaskPage:
    """List what was asked for, the latest first."""
    with counter.reading() as connection:
        after = load_task(connection, paging.after) if paging.after else None
        found = list_tasks(connection, limit=paging.limit + 1, after=after)
    shown = found[: paging.limit]
    paging.link_next(shown[-1].task_id if len(found) > len(shown) else "")
    return TaskPage(tasks=[show_task(task) for task in shown])


@router.post(
    "/api/tasks/prints",
    dependencies=[needs(Role.PRINT)],
    status_code=_ACCEPTED,
    response_model=TaskView,
)
def ask_for_print(body: PrintBody, asked: TheAsked) -> Response:
    """Ask for a print run; which cards are wrong is found out when the work begins."""
    return _ask(asked, body.to_request(asked.counter.data_folder), body.model_dump_json())


@router.post(
    "/api/tasks/imports",
    dependencies=[needs(Role.MANAGE)],
    status_code=_ACCEPTED,
    response_model=TaskView,
)
def ask_for_import(form: Annotated[ImportForm, File()], asked: TheAsked) -> Response:
    """Ask for an import, of all records or none."""
    received = receive(form.files)
    request = _shelve(asked.counter.shelf, received.files, form.mapping)
    return _ask(asked, request, received.sha256 + form.mapping)


@router.post(
    "/api/tasks/photos",
    dependencies=[needs(Role.PACK)],
    status_code=_ACCEPTED,
    response_model=TaskView,
)
def ask_for_photos(form: Annotated[PhotosForm, File()], asked: TheAsked) -> Response:
    """Ask for many photos to be brought; those brought before an end stay."""
    with tempfile.TemporaryDirectory(dir=asked.counter.scratch_folder) as folder:
        packed = FilePath(folder) / NAME
        pack_photos(form.photos, packed)
        stored = asked.counter.shelf.put(packed, packed.suffix)
    name = form.photos[0].filename if len(form.photos) == 1 else NAME
    file = ShelvedFile(_with_suffix(name or NAME, packed.suffix), stored.sha256)
    return _ask(asked, PhotosRequest(file), stored.sha256)


@router.get("/api/tasks/{task}", dependencies=[needs(Role.VIEW)])
def task_by_name(task: TaskId, counter: TheCounter) -> TaskView:
    """Tell how far a task is, or what came of it."""
    with counter.reading() as connection:
        return show_task(load_task(connection, task))


@router.post("/api/tasks/{task}/cancel", dependencies=[needs(Role.PACK)])
def end_task(task: TaskId, acting: TheActing, reader: TheReader) -> TaskView:
    """End a task: nothing more of it is kept. One that has ended already stays as it is.

    That of somebody else takes a manager.

    Raises:
        RefusedError: When it is of somebody else.
    """
    with acting.counter.reading() as connection:
        asker = load_task(connection, task).stamp.actor
    if asker != acting.stamp.actor and not reader.may(Role.MANAGE):
        raise RefusedError(Refusal.NOT_ALLOWED, "The task is of somebody else.")
    cancel(acting.counter.engine, task, at=acting.stamp.at)
    with acting.counter.reading() as connection:
        return show_task(load_task(connection, task))


def _ask(asked: Asked, request: Request, sent: str) -> Response:
    """Put the task in the line and keep the reply, in one transaction."""

    def submit(connection: Connection) -> Made:
        if isinstance(request, PrintRequest):
            # Nobody waits in the line to hear that there is no such printer or printed card.
            name_cards(connection, request.printed)
            name_printer(asked.counter.data_folder, request.printer, request.tray)
        if isinstance(request, ImportRequest):
            load_mappings(connection, wanted=request.mapping)
        task_id = submit_within(connection, asked.counter.line, request, stamp=asked.stamp)
        shown = show_task(load_task(connection, task_id))
        return Made(shown, _ACCEPTED, {"Location": f"/api/tasks/{task_id}"})

    return make_once(asked, sent, submit)


def _shelve(shelf: FileShelf, files: Mapping[str, bytes], mapping: str) -> ImportRequest:
    """Keep the files of an export until the work is done; the names say what is in them."""
    shelved = []
    for name, data in files.items():
        suffix = ShelvedFile(name, "").suffix
        shelved.append(ShelvedFile(name, shelf.put(data, suffix).sha256))
    return ImportRequest(tuple(shelved), mapping)


def _with_suffix(name: str, suffix: str) -> str:
    """Name a file as it was sent, but always by the ending under which it lies on the shelf."""
    plain = PurePosixPath(name.replace("\\", "/")).name
    return plain if plain.casefold().endswith(suffix) else f"{plain}{suffix}"
