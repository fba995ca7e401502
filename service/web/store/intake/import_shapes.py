"""The shapes of imports: what is sent, what would change, and what was done."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from fastapi import UploadFile
from pydantic import BaseModel, ConfigDict, Field

from service.findings import Finding
from service.records.record import PlaceRecord
from service.store.kept.imports import Import
from service.store.packing.differ import Course
from service.store.packing.take_in import Outcome
from service.store.plan_records import RecordsPlan
from service.web.replies.problems import FindingView, show_findings
from service.web.store.records.shapes import STRICT

_MOST_FILES = 10


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
    mapping: str = Field(
        default="",
        max_length=200,
        description="The saved mapping by which a table is read; else one made for its headings.",
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
    """An import; one that `undoes` another took it back, as those of `undone_by` did with it."""

    import_id: int
    name: str
    sha256: str
    summary: dict[str, int]
    by: str
    at: datetime
    undoes: int | None
    undone_by: list[int]


class ImportsView(BaseModel):
    """Imports, the latest first."""

    imports: list[ImportLine]


def show_plan(plan: RecordsPlan, findings: Sequence[Finding]) -> PreviewView:
    """Turn a plan into what a reply holds of it."""
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


def show_line(one: Import) -> ImportLine:
    """Turn an import into its line of a list."""
    return ImportLine(
        import_id=one.import_id,
        name=one.name,
        sha256=one.sha256,
        summary=dict(one.summary),
        by=one.stamp.actor,
        at=one.stamp.at,
        undoes=one.undoes,
        undone_by=list(one.undone_by),
    )
