"""Paths of imports: what taking files in would change, and the change itself."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import PurePosixPath
from typing import Annotated

from fastapi import APIRouter, File, Response, UploadFile
from pydantic import BaseModel, ConfigDict, Field

from service.findings import Finding
from service.keeping.imports import (
    SourceFile,
    TakenIn,
    apply_import,
    preview_import,
    summarise,
)
from service.pipeline.read import read_source
from service.records.record import Collection, PlaceRecord
from service.store.handles import Connection
from service.store.kept.imports import Import, list_imports
from service.store.packing.differ import Course
from service.store.packing.take_in import Outcome
from service.store.people.role import Role
from service.store.plan_records import RecordsPlan
from service.web.access.gate import GatedRoute, needs
from service.web.replies.problems import FindingView, show_findings
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import TheAsked, TheCounter
from service.web.store.counter import Counter
from service.web.store.once import Made, find_again, keep_made
from service.web.store.records.shapes import STRICT

router = APIRouter(route_class=GatedRoute)

_MOST_BYTES = 64 * 1024 * 1024
_MOST_FILES = 10
_LONGEST_NAME = 200


class ImportForm(BaseModel):
    """The files of one export: a document, a workbook, an archive, or the tables of a folder."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={"examples": [{"files": ["one_box.json"]}]}
    )

    files: list[UploadFile] = Field(
        min_length=1,
        max_length=_MOST_FILES,
        description="A JSON, XLSX or CSV file, a LIDO file (.xml), a Darwin Core Archive (.zip), or"
        " objects.csv, containers.csv, packings.csv and museum.toml together; at most 64 MB.",
    )


class OutcomeView(BaseModel):
    """Numbers by what is done with them."""

    new: list[str]
    changed: list[str]
    unchanged: int


class PlaceChangeView(BaseModel):
    """An object as it lies and as it will; `before` or `after` is None where it does not there.

    `other` is the container it comes from or goes to, where that is packed anew as well.
    """

    course: Course
    before: PlaceRecord | None
    after: PlaceRecord | None
    other: str


class RepackingView(BaseModel):
    """How one container is packed anew; `packed` has who, when and why, where they differ."""

    places: list[PlaceChangeView]
    packed: dict[str, dict[str, object]]


class PreviewView(BaseModel):
    """What an import would do.

    `differences` has the cells of each changed record, `repacked` how each container that has a
    packing already is packed anew; both by number.
    """

    objects: OutcomeView
    containers: OutcomeView
    packings: OutcomeView
    museum_changed: bool
    differences: dict[str, dict[str, dict[str, dict[str, object]]]]
    repacked: dict[str, RepackingView]
    findings: list[FindingView]


class ImportView(BaseModel):
    """An import that was done: how many records were new, changed, unchanged and refused."""

    import_id: int
    summary: dict[str, int]
    findings: list[FindingView]


class ImportLine(BaseModel):
    """An import in a list."""

    import_id: int
    name: str
    sha256: str
    summary: dict[str, int]
    by: str
    at: datetime


class ImportsView(BaseModel):
    """Imports, the latest first."""

    imports: list[ImportLine]


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

    def read(self, counter: Counter) -> Collection:
        """Read the records in a child process with limits."""
        with counter.working() as desk:
            return read_source(self.files, desk.workshop.workers)


@router.get("/api/imports", dependencies=[needs(Role.VIEW)])
def imports(counter: TheCounter) -> ImportsView:
    """List which files were taken in, the latest first."""
    with counter.reading() as connection:
        found = list_imports(connection)
    return ImportsView(imports=[_show_line(one) for one in found])


@router.post("/api/imports/preview", dependencies=[needs(Role.MANAGE)])
def preview(form: Annotated[ImportForm, File()], counter: TheCounter) -> PreviewView:
    """Say what taking these files in would change; nothing is changed."""
    collection = receive(form.files).read(counter)
    return _show_plan(preview_import(counter.engine, collection), collection.findings)


@router.post(
    "/api/imports", dependencies=[needs(Role.MANAGE)], status_code=201, response_model=ImportView
)
def take_in(form: Annotated[ImportForm, File()], asked: TheAsked) -> Response:
    """Take files in, all of their records or none; the same files again change nothing."""
    received = receive(form.files)
    sent = received.sha256
    with asked.counter.reading() as connection:
        again = find_again(connection, asked, sent)
    if again is not None:
        return again
    collection = received.read(asked.counter)
    source = SourceFile(", ".join(received.files), sent)

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


def _show_plan(plan: RecordsPlan, findings: Sequence[Finding]) -> PreviewView:
    return PreviewView(
        objects=_show_outcome(plan.objects.outcome),
        containers=_show_outcome(plan.containers.outcome),
        packings=_show_outcome(plan.packings.outcome),
        museum_changed=plan.museum.wanted is not None,
        differences={
            number: kind.difference(number)
            for kind in (plan.objects, plan.containers)
            for number in kind.outcome.changed
        },
        repacked={
            number: RepackingView.model_validate(one, from_attributes=True)
            for number, one in plan.packings.repacked.items()
        },
        findings=show_findings((*findings, *plan.findings)),
    )


def _show_outcome(outcome: Outcome) -> OutcomeView:
    return OutcomeView(
        new=list(outcome.new), changed=list(outcome.changed), unchanged=len(outcome.unchanged)
    )


def _show_line(one: Import) -> ImportLine:
    return ImportLine(
        import_id=one.import_id,
        name=one.name,
        sha256=one.sha256,
        summary=dict(one.summary),
        by=one.stamp.actor,
        at=one.stamp.at,
    )
