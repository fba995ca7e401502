"""What an import would change, as the check shows it: counts, cells, boxes, findings."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from service.findings import Finding, Severity
from service.keeping.intake.bring_kept import KeptPreview
from service.keeping.photos.plan import PhotoPlan
from service.store.packing.differ import PlaceChange
from service.store.packing.take_in import Outcome
from service.store.plan_records import KindPlan, Record, RecordsPlan

SHOWN = 40
"""Records and boxes that are shown one by one; the counts are of all."""
SHOWN_FINDINGS = 60
_LONGEST = 120


@dataclass(frozen=True, slots=True)
class Counts:
    """How many of one kind are new, changed and unchanged."""

    kind: str
    new: int
    changed: int
    unchanged: int


@dataclass(frozen=True, slots=True)
class CellChange:
    """A field of a record as it is and as it will be; empty where it says nothing."""

    field: str
    before: str
    after: str


@dataclass(frozen=True, slots=True)
class ChangedRecord:
    """An object or a container with the cells of it that differ."""

    kind: str
    number: str
    cells: tuple[CellChange, ...]


@dataclass(frozen=True, slots=True)
class BoxChange:
    """A container that is packed, or packed anew: what comes, goes and moves, and how much."""

    number: str
    is_new: bool
    places: tuple[PlaceChange, ...]
    count: int


@dataclass(frozen=True, slots=True)
class Differences:
    """Everything that the page shows; what is shown one by one is cut short, the counts are not."""

    counts: tuple[Counts, ...]
    museum_changed: bool
    records: tuple[ChangedRecord, ...]
    record_count: int
    boxes: tuple[BoxChange, ...]
    box_count: int
    findings: tuple[Finding, ...]
    finding_count: int
    refused_count: int
    photos: PhotoPlan

    @property
    def is_nothing(self) -> bool:
        """Tell whether the store has all of it already."""
        touched = any(one.new or one.changed for one in self.counts)
        return not (touched or self.museum_changed or self.photos.matched)


def show_differences(preview: KeptPreview) -> Differences:
    """Gather what taking something in would change."""
    plan = preview.plan
    records = [*_changed(plan.objects, "objects"), *_changed(plan.containers, "containers")]
    boxes = [*_packed_anew(plan), *_packed_first(plan)]
    findings = sorted(preview.findings, key=lambda one: _RANK[one.severity])
    return Differences(
        counts=tuple(_counts(plan)),
        museum_changed=plan.museum.wanted is not None,
        records=tuple(records[:SHOWN]),
        record_count=len(records),
        boxes=tuple(boxes[:SHOWN]),
        box_count=len(boxes),
        findings=tuple(findings[:SHOWN_FINDINGS]),
        finding_count=len(findings),
        refused_count=sum(one.severity is Severity.ERROR for one in findings),
        photos=preview.photos,
    )


_RANK = {Severity.ERROR: 0, Severity.WARNING: 1, Severity.NOTE: 2}


def _counts(plan: RecordsPlan) -> Iterator[Counts]:
    yield _count("objects", plan.objects.outcome)
    yield _count("containers", plan.containers.outcome)
    yield _count("packings", plan.packings.outcome)


def _count(kind: str, outcome: Outcome) -> Counts:
    return Counts(kind, len(outcome.new), len(outcome.changed), len(outcome.unchanged))


def _changed(plan: KindPlan[Record], kind: str) -> Iterator[ChangedRecord]:
    for number in plan.outcome.changed:
        difference = plan.difference(number)
        cells = _cells(difference["record"])
        yield ChangedRecord(kind, number, cells or _source_cells(difference["source"]))


def _cells(pair: Mapping[str, Mapping[str, object]]) -> tuple[CellChange, ...]:
    names = dict.fromkeys((*pair["before"], *pair["after"]))
    return tuple(
        CellChange(name, tell_value(pair["before"].get(name)), tell_value(pair["after"].get(name)))
        for name in names
    )


def _source_cells(pair: Mapping[str, Mapping[str, object]]) -> tuple[CellChange, ...]:
    """Tell of cells that are kept but not printed, in one line."""
    names = dict.fromkeys((*pair["before"], *pair["after"]))
    return (CellChange("source", "", ", ".join(names)[:_LONGEST]),)


def _packed_anew(plan: RecordsPlan) -> Iterator[BoxChange]:
    for number, one in plan.packings.repacked.items():
        yield BoxChange(number, is_new=False, places=one.places[:SHOWN], count=len(one.places))


def _packed_first(plan: RecordsPlan) -> Iterator[BoxChange]:
    new = set(plan.packings.outcome.new)
    for packing in plan.packings.accepted:
        if packing.container_number in new:
            count = len({place.object_number for place in packing.places})
            yield BoxChange(packing.container_number, is_new=True, places=(), count=count)


def tell_value(value: object) -> str:
    """Write a value of a record in one line; what says nothing is empty."""
    return _tell(value)[:_LONGEST]


def _tell(value: object) -> str:
    if value is None or value == "":
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Mapping):
        return ", ".join(f"{name.replace('_', ' ')} {_tell(one)}" for name, one in value.items())
    if isinstance(value, Sequence) and not isinstance(value, str):
        return "; ".join(filter(None, map(_tell, value)))
    return str(value)
