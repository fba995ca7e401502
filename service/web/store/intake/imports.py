"""Paths of imports: what taking files in would change, and the change itself."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import PurePosixPath
from typing import Annotated

from fastapi import APIRouter, File, Response, UploadFile

from service.keeping.imports import (
    SourceFile,
    TakenIn,
    apply_import,
    preview_import,
    summarise,
)
from service.keeping.intake.reading import read_mapped
from service.records.record import Collection
from service.store.handles import Connection
from service.store.kept.imports import list_imports
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.problems import show_findings
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import TheAsked, TheCounter
from service.web.store.counter import Counter
from service.web.store.intake.import_shapes import (
    ImportForm,
    ImportsView,
    ImportView,
    PreviewView,
    show_line,
    show_plan,
)
from service.web.store.once import Made, find_again, keep_made

router = APIRouter(route_class=GatedRoute)

_MOST_BYTES = 64 * 1024 * 1024
_LONGEST_NAME = 200


@dataclass(frozen=True, slots=True)
class Received:
    """The bytes of an export by file name."""

    files: Mapping[str, bytes]

    @property
    def sha256(self) -> str:
        """One hash of all files, in the order of their names."""
        digest = hashlib.sha256()
        for name, data in sorted(self.files.items()):
            digest.update(name.encode() + b"\0" + hashlib.sha256(data).digest())
        return digest.hexdigest()

    def read(self, counter: Counter, mapping: str) -> Collection:
        """Read the records in a child process with limits, by a mapping where one is named."""
        with counter.working() as desk:
            return read_mapped(desk, self.files, mapping=mapping)


@router.get("/api/imports", dependencies=[needs(Role.VIEW)])
def imports(counter: TheCounter) -> ImportsView:
    """List which files were taken in, the latest first."""
    with counter.reading() as connection:
        found = list_imports(connection)
    return ImportsView(imports=[show_line(one) for one in found])


@router.post("/api/imports/preview", dependencies=[needs(Role.MANAGE)])
def preview(form: Annotated[ImportForm, File()], counter: TheCounter) -> PreviewView:
    """Say what taking these files in would change; nothing is changed."""
    collection = receive(form.files).read(counter, form.mapping)
    return show_plan(preview_import(counter.engine, collection), collection.findings)


@router.post(
    "/api/imports", dependencies=[needs(Role.MANAGE)], status_code=201, response_model=ImportView
)
def take_in(form: Annotated[ImportForm, File()], asked: TheAsked) -> Response:
    """Take files in, all of their records or none; the same files again change nothing."""
    received = receive(form.files)
    sent = received.sha256 + form.mapping
    with asked.counter.reading() as connection:
        again = find_again(connection, asked, sent)
    if again is not None:
        return again
    collection = received.read(asked.counter, form.mapping)
    source = SourceFile(", ".join(received.files), received.sha256)

    def also_save(connection: Connection, taken: TakenIn) -> None:
        keep_made(connection, asked, sent, _tell(taken, collection))

    taken = apply_import(
        asked.counter.engine, source, collection, stamp=asked.stamp, also_save=also_save
    )
    return _tell(taken, collection).to_response()


def receive(files: Sequence[UploadFile]) -> Received:
    """Read the files, but not much more than the most that is taken.

    Raises:
        RefusedError: When they are too large, or two share a name.
    """
    received: dict[str, bytes] = {}
    left_bytes = _MOST_BYTES
    for file in files:
        name = PurePosixPath((file.filename or "").replace("\\", "/")).name[-_LONGEST_NAME:]
        if not name.isprintable() or not name or name in received:
            raise RefusedError(Refusal.UNUSABLE_FIELD, "files: each needs a name of its own")
        received[name] = file.file.read(left_bytes + 1)
        left_bytes -= len(received[name])
        if left_bytes < 0:
            raise RefusedError(Refusal.TOO_LARGE, "The files are larger than 64 MB.")
    return Received(received)


def _tell(taken: TakenIn, collection: Collection) -> Made:
    findings = (*collection.findings, *taken.saved.findings)
    return Made(
        ImportView(
            import_id=taken.import_id,
            summary=summarise(taken.saved),
            findings=show_findings(findings),
        )
    )
