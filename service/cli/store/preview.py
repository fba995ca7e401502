"""What an import would change, in words and as data."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from service.cli.report import finding_as_data
from service.contents.places import name_place
from service.findings import Finding
from service.records.record import PlaceRecord
from service.store.packing.differ import Course, PlaceChange, Repacking
from service.store.packing.take_in import Outcome
from service.store.plan_records import KindPlan, Record, RecordsPlan

_SHOWN = 20
"""How many changed records a preview shows to people; as JSON it shows all."""


def preview_data(plan: RecordsPlan, findings: tuple[Finding, ...]) -> dict[str, object]:
    """Give all that would change."""
    repacked = plan.packings.repacked
    return {
        "objects": _outcome_data(plan.objects.outcome),
        "containers": _outcome_data(plan.containers.outcome),
        "packings": _outcome_data(plan.packings.outcome),
        "museum_changed": plan.museum.wanted is not None,
        "differences": {**_differences(plan.objects), **_differences(plan.containers)},
        "repacked": {number: _repacking_data(one) for number, one in repacked.items()},
        "findings": [finding_as_data(finding) for finding in findings],
    }


def preview_lines(plan: RecordsPlan) -> list[str]:
    """Say how much would change, and of the first of each kind what."""
    lines = [
        f"{name}: {len(outcome.new)} new, {len(outcome.changed)} changed,"
        f" {len(outcome.unchanged)} unchanged"
        for name, outcome in (
            ("Objects", plan.objects.outcome),
            ("Containers", plan.containers.outcome),
            ("Packings", plan.packings.outcome),
        )
    ]
    for kind in (plan.objects, plan.containers):
        for number in kind.outcome.changed[:_SHOWN]:
            lines += _difference_lines(number, kind.difference(number)["record"])
    for number, repacking in list(plan.packings.repacked.items())[:_SHOWN]:
        lines += _repacking_lines(number, repacking)
    return [*lines, "Nothing has been changed yet; without --preview it will be."]


def _outcome_data(outcome: Outcome) -> dict[str, object]:
    return {
        "new": outcome.new,
        "changed": outcome.changed,
        "unchanged": len(outcome.unchanged),
    }


def _differences(plan: KindPlan[Record]) -> dict[str, object]:
    return {number: plan.difference(number) for number in plan.outcome.changed}


def _repacking_data(one: Repacking) -> dict[str, object]:
    return {"places": [_change_data(each) for each in one.places], "packed": one.packed}


def _change_data(each: PlaceChange) -> dict[str, object]:
    return {
        "object_number": each.place.object_number,
        "parts": each.place.parts,
        "course": each.course.value,
        "before": _spot_data(each.before),
        "after": _spot_data(each.after),
        "other": each.other,
    }


def _spot_data(place: PlaceRecord | None) -> dict[str, object] | None:
    if place is None:
        return None
    return {"layer": place.layer, "compartment": place.compartment, "note": place.note}


def _difference_lines(number: str, differing: Mapping[str, Mapping[str, object]]) -> Iterator[str]:
    before, after = differing["before"], differing["after"]
    for name in dict.fromkeys((*before, *after)):
        was, becomes = before.get(name, "nothing"), after.get(name, "nothing")
        yield f"  {number} {name}: {was} becomes {becomes}"


def _repacking_lines(number: str, one: Repacking) -> Iterator[str]:
    for each in one.places:
        yield f"  {number}: {name_place(each.place)} {_say_change(each)}"
    yield from _difference_lines(number, one.packed)


def _say_change(each: PlaceChange) -> str:
    if each.course is Course.IN:
        return f"comes in, {_say_spot(each.place)}" + (f", from {each.other}" if each.other else "")
    if each.course is Course.OUT or each.before is None:
        return "goes out" + (f", to {each.other}" if each.other else "")
    if each.course is Course.MOVED:
        return f"moves from {_say_spot(each.before)} to {_say_spot(each.place)}"
    return f"note: {each.before.note or 'nothing'} becomes {each.place.note or 'nothing'}"


def _say_spot(place: PlaceRecord) -> str:
    return f"layer {place.layer} {place.compartment}".rstrip()
