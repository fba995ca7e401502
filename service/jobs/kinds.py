"""The kinds of work. Each finishes its task in the transaction that keeps what it made."""

from __future__ import annotations

import hashlib
import threading
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from pathlib import Path

from service.errors import FileNotStoredError, UnreadableFileError
from service.findings import Finding
from service.jobs.requests import (
    ImportRequest,
    PhotosRequest,
    PrintRequest,
    SheetInTray,
    ShelvedFile,
    SpoiledRequest,
    read_request,
)
from service.jobs.results import tell_findings
from service.jobs.watch import TaskOverError, Watch
from service.keeping.desk import Desk
from service.keeping.imports import SourceFile, TakenIn, apply_import, summarise
from service.keeping.intake.reading import read_mapped
from service.keeping.photos.bring import bring_in_bulk
from service.keeping.printing.pick import name_lacking
from service.keeping.printing.printers_file import name_printer
from service.keeping.printing.prints import MadeRun, print_run
from service.keeping.printing.spoil import SpoiledSheet, print_spoiled
from service.keeping.reprints import name_cards, name_reprints
from service.pages.ruler import Ruler
from service.pipeline.options import PrintOptions
from service.pipeline.read import Content
from service.sheets.printers.used_sheet import UsedSheet
from service.store.handles import Connection, Engine
from service.store.history import Stamp
from service.store.kept.tasks import Task, TaskState, finish_task
from service.store.kept.used_sheets import load_used_sheets
from service.store.open import reading, writing

Clock = Callable[[], datetime]

_STREAMED = ".xml"
"""A LIDO file may be too large for the memory; it is read where it lies."""


@dataclass(frozen=True, slots=True)
class Job:
    """One task in hand; `noticed` is told even when the work comes to nothing."""

    desk: Desk
    task: Task
    clock: Clock
    stopping: threading.Event
    noticed: list[Finding] = field(default_factory=list)

    @property
    def stamp(self) -> Stamp:
        """Who asked for it, at the moment it is done."""
        return Stamp(self.task.stamp.actor, self.clock())

    def watch(self) -> Watch:
        """Give what is told the progress."""
        return Watch(self.desk.engine, self.task.task_id, self.stopping)

    def finish(self, connection: Connection, result: Mapping[str, object]) -> None:
        """Finish the task, together with what else the transaction keeps.

        Raises:
            TaskOverError: When it is finished already, so that nothing of this is kept.
        """
        at = self.clock()
        if not finish_task(connection, self.task.task_id, TaskState.DONE, result, at=at):
            raise TaskOverError


def run_print(job: Job) -> None:
    """Print cards; a card that cannot be drawn is a finding, and the others are printed.

    Raises:
        TaskOverError: When the task was finished meanwhile; there is no second run.
        ServiceError: When there is nothing to print, or it cannot be printed as asked.
    """
    options = look_up_options(job.desk, read_request(PrintRequest, job.task.request))

    def also_save(connection: Connection, made: MadeRun) -> None:
        job.finish(connection, _tell_run(made))

    print_run(job.desk, options, stamp=job.stamp, on_progress=job.watch(), also_save=also_save)


def run_spoiled(job: Job) -> None:
    """Print the cards of a spoiled sheet again; they are marked as spoiled with the new run.

    Raises:
        TaskOverError: When the task was finished meanwhile; nothing is marked.
        ServiceError: When no card lies on that sheet any more, or it cannot be printed.
    """
    asked = read_request(SpoiledRequest, job.task.request)
    printer = name_printer(job.desk.data_folder, asked.printer, asked.tray)
    sheet = SpoiledSheet(asked.run_id, asked.file, asked.sheet, printer)

    def also_save(connection: Connection, made: MadeRun) -> None:
        job.finish(connection, _tell_run(made))

    print_spoiled(job.desk, sheet, stamp=job.stamp, on_progress=job.watch(), also_save=also_save)


def look_up_options(desk: Desk, request: PrintRequest) -> PrintOptions:
    """Look up which printer is meant, which cards are wrong, and on which sheets the run goes on.

    Raises:
        UnknownPrinterError: When the printer or tray is not known any more.
        NotFoundError: When no card is on the list asked for, or one named was never printed.
        ServiceError: When the request names what does not exist.
    """
    printer = name_printer(desk.data_folder, request.printer, request.tray)
    options = look_up_cards(desk.engine, desk.workshop.ruler, request)
    return replace(options, printer=printer)


def look_up_cards(engine: Engine, ruler: Ruler, request: PrintRequest) -> PrintOptions:
    """Look up all but the printer.

    Raises:
        NotFoundError: When no card is on the list asked for, or one named was never printed.
        ServiceError: When the request names what does not exist.
    """
    options = request.to_options()
    with reading(engine) as connection:
        begun = load_used_sheets(connection) if request.go_on else ()
        only = options.only | name_cards(connection, request.printed)
    if request.reprints:
        only = name_reprints(engine, ruler)
    if request.lacking:
        only = name_lacking(engine, ruler)
    return replace(options, only=only, begun=put_in_tray(begun, request.sheets))


def put_in_tray(begun: Sequence[UsedSheet], sheets: Sequence[SheetInTray]) -> tuple[UsedSheet, ...]:
    """Give the sheets to begin on: as somebody sees them, else as they were remembered."""
    seen = {sheet.stock: UsedSheet(sheet.stock, frozenset(sheet.positions)) for sheet in sheets}
    return (*(sheet for sheet in begun if sheet.stock not in seen), *seen.values())


def run_import(job: Job) -> None:
    """Take an export in, all of its records or none.

    Raises:
        TaskOverError: When the task was finished meanwhile; nothing is taken in.
        ServiceError: When the files cannot be read, or a text cannot be stored.
    """
    request = read_request(ImportRequest, job.task.request)
    files = request.files
    watch = job.watch()
    watch("read", 0, 2)
    contents = {file.name: _open(job.desk, file) for file in files}
    collection = read_mapped(job.desk, contents, mapping=request.mapping)
    job.noticed.extend(collection.findings)
    watch("read", 1, 2)

    def also_save(connection: Connection, taken: TakenIn) -> None:
        findings = (*collection.findings, *taken.saved.findings)
        summary = summarise(taken.saved)
        result = {"import_id": taken.import_id, "summary": summary, **tell_findings(findings)}
        job.finish(connection, result)

    source = SourceFile(", ".join(contents), _hash(files))
    apply_import(job.desk.engine, source, collection, stamp=job.stamp, also_save=also_save)


def run_photos(job: Job) -> None:
    """Bring photos; done once more it changes nothing, since each is known by its SHA-256.

    Raises:
        TaskOverError: When the task was finished meanwhile; what was brought stays.
        FileNotStoredError: When the ZIP file is no longer on the shelf.
        UnreadableFileError: When it is damaged, locked with a password, or too large.
    """
    file = read_request(PhotosRequest, job.task.request).file
    try:
        brought = bring_in_bulk(
            job.desk, _find(job.desk, file), stamp=job.stamp, on_progress=job.watch()
        )
    except UnreadableFileError as error:
        # On the shelf it goes by a hash, which says nothing to whoever brought it.
        raise UnreadableFileError(file.name, tried=error.tried) from error
    result = {"matched": len(brought.matched), "new": brought.new}
    with writing(job.desk.engine) as connection:
        job.finish(connection, {**result, **tell_findings(brought.findings)})


def _tell_run(made: MadeRun) -> dict[str, object]:
    """Tell of a run what its task keeps."""
    files = [{"name": file.name, "stock": file.stock, "sha256": file.sha256} for file in made.files]
    told = {"run_id": made.run_id, "cards": len(made.cards), "files": files}
    return {**told, **tell_findings(made.findings)}


def _open(desk: Desk, file: ShelvedFile) -> Content:
    """Give the bytes of a file, or where a large one lies.

    Raises:
        FileNotStoredError: When it is no longer on the shelf.
        FileDamagedError: When its bytes have changed since.
    """
    if file.suffix == _STREAMED:
        return _find(desk, file)
    return desk.shelf.get(file.sha256, file.suffix)


def _find(desk: Desk, file: ShelvedFile) -> Path:
    """Give the path of a file on the shelf.

    Raises:
        FileNotStoredError: When it is no longer there.
    """
    path = desk.shelf.local_path(file.sha256, file.suffix)
    if not path.is_file():
        raise FileNotStoredError(file.sha256)
    return path


def _hash(files: Sequence[ShelvedFile]) -> str:
    """Give one hash of all files of an export, in the order of their names."""
    digest = hashlib.sha256()
    for file in sorted(files, key=lambda file: file.name):
        digest.update(file.name.encode() + b"\0" + bytes.fromhex(file.sha256))
    return digest.hexdigest()
